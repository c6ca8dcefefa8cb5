/** Two chambers, a capacitor and a vent that resists: the circuit simulator solves each of their parts. */
import { driver, lr2Inductor } from '@airspring/core/driver';
import {
  aperiodicBox,
  capacitorBox,
  fourthOrderBandPass,
  openBaffle,
  parallelBandPass,
  type System,
  seriesBandPass,
} from '@airspring/core/enclosure';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { describe, expect, test } from 'vitest';
import { check } from '../ledger/check.js';
import { byEither, byPlan, flat, largest, minus, scaled, worst } from './compare.js';
import { simulate } from './simulator.js';

/** Invented. */
const drivers = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
  coil: lr2Inductor({ Le: '0.6 mH', R2: '7 ohm', L2: '1.4 mH' }),
});
const front = {
  frontVolume: '22 L',
  frontTuning: '58 Hz',
  frontVentArea: '70 cm²',
  frontQL: 8,
  frontQA: 40,
  frontQP: 30,
} as const;
const rear = {
  rearVolume: '35 L',
  rearTuning: '31 Hz',
  rearVentArea: '90 cm²',
  rearQL: 11,
  rearQA: 25,
  rearQP: 45,
} as const;
const sourceResistance = '0.3 ohm';
/** Made anew for each check, so that a check feels the formula. */
const systems: Readonly<Record<string, () => System>> = {
  fourthOrderBandPass: () =>
    fourthOrderBandPass({
      ...front,
      drivers,
      sourceResistance,
      rearVolume: '30 L',
      rearFillGain: 1.15,
      rearQL: 9,
      rearQA: 25,
    }),
  parallelBandPass: () => parallelBandPass({ ...front, ...rear, drivers, sourceResistance }),
  seriesBandPass: () => seriesBandPass({ ...front, ...rear, drivers, sourceResistance }),
  capacitorBox: () =>
    capacitorBox({
      drivers,
      sourceResistance,
      netVolume: '20 L',
      seriesCapacitance: '700 µF',
      QL: 9,
      QA: 25,
    }),
  aperiodicBox: () =>
    aperiodicBox({
      drivers,
      sourceResistance,
      netVolume: '20 L',
      ventResistance: '11000 Pa·s/m³',
      ventArea: '50 cm²',
      QL: 12,
    }),
};

/** The simulator's names have no blanks. */
const plain = (name: string) => name.replace(/ /g, '_').toLowerCase();

/** What the simulator says of each probe and of what leaves the box. */
async function simulated({ network }: System) {
  const run = await simulate(network, 10, 1000, 41);
  const named = (name: string) => run.get(plain(name)) as ComplexColumn;
  const of = (name: string) => network.values[name] as number;
  const frequencies = named('frequency').re;
  const nodeOf = (node: string) => (node === 'ground' ? complexColumn(frequencies.length) : named(`v(${node})`));
  /** Flow from the first to the second node: through a mass or a resistance, each by what stands across it. */
  const flowOf = (name: string): ComplexColumn => {
    const element = network.topology.elements.find((one) => one.name === name);
    if (element === undefined || !('nodes' in element)) throw new Error(`no branch ${name}`);
    const across = minus(nodeOf(element.nodes[0]), nodeOf(element.nodes[1]));
    if (element.kind === 'acousticResistance') return scaled(across, 1 / of(name));
    // Pressure over jωM: as the derivative turns by jω, divide by it.
    const out = complexColumn(frequencies.length);
    frequencies.forEach((f, i) => {
      const wM = 2 * Math.PI * f * of(name);
      out.re[i] = across.im[i]! / wM;
      out.im[i] = -across.re[i]! / wM;
    });
    return out;
  };
  const leaving = network.topology.outlets.map(({ flow }) => {
    if (flow.of !== 'flow') throw new Error('an outlet is a flow');
    return flow.element === 'Sd' ? scaled(named('v(cone)'), of('Sd')) : flowOf(flow.element);
  });
  const speeds = Object.entries(network.topology.probes).flatMap(([name, probe]): [string, ComplexColumn][] =>
    probe.of === 'flow' && probe.factor !== undefined ? [[name, scaled(flowOf(probe.element), of(probe.factor))]] : [],
  );
  const columns: Readonly<Record<string, ComplexColumn>> = {
    radiatedFlow: leaving.reduce((sum, column) => minus(sum, scaled(column, -1)), complexColumn(frequencies.length)),
    coneVelocity: named('v(cone)'),
    current: scaled(named('i(v_drive)'), -1), // SPICE counts it into the plus pole
    terminalVoltage: named('v(terminals)'),
    ...Object.fromEntries(speeds),
  };
  return { frequencies, columns };
}

for (const [name, make] of Object.entries(systems)) {
  const system = make();
  const { frequencies, columns } = await simulated(system);
  describe(`a circuit simulator and both roads agree, ${name}`, () => {
    test('all probes are compared', () => {
      expect(Object.keys(columns).sort()).toEqual(
        ['radiatedFlow', ...Object.keys(system.network.topology.probes)].sort(),
      );
    });
    test.each(Object.entries(columns))('%s', (probe, column) => {
      expect(worst(column, byEither(system.network, frequencies)[probe]!)).toBeLessThan(1e-9);
      expect(worst(column, byPlan(system.network, frequencies)[probe]!)).toBeLessThan(1e-9);
    });
  });
  const flow = columns.radiatedFlow!;
  check(`enclosure.${name}.circuit`, {
    formula: `enclosure/${name}`,
    source: { key: 'ngspice', locator: '.ac of the netlist text, 10 Hz to 1 kHz' },
    status: 'derived',
    kind: 'program',
    given: { sourceResistance: { value: 0.3, unit: 'Ω' } },
    got: () => flat(byEither(make().network, frequencies).radiatedFlow!),
    expected: flat(flow),
    unit: 'm³/s per V',
    tolerance: { absolute: 1e-13 * largest(flow), why: 'of the largest value; both in double precision' },
  });
}

test('an open baffle is the cone alone, heard twice', async () => {
  const { network, air } = openBaffle({ drivers, path: '45 cm', sourceResistance });
  const run = await simulate(network, 10, 1000, 41);
  const [cone, { re: frequencies }] = ['v(cone)', 'frequency'].map((name) => run.get(name)) as [
    ComplexColumn,
    ComplexColumn,
  ];
  const expected = complexColumn(frequencies.length);
  const Sd = network.values.Sd as number;
  frequencies.forEach((f, i) => {
    const angle = (2 * Math.PI * f * 0.45) / air.speedOfSound;
    const [c, s] = [1 - Math.cos(angle), Math.sin(angle)];
    expected.re[i] = Sd * (cone.re[i]! * c - cone.im[i]! * s);
    expected.im[i] = Sd * (cone.re[i]! * s + cone.im[i]! * c);
  });
  expect(worst(expected, byEither(network, frequencies).radiatedFlow!)).toBeLessThan(1e-9);
  expect(worst(expected, byPlan(network, frequencies).radiatedFlow!)).toBeLessThan(1e-9);
});
