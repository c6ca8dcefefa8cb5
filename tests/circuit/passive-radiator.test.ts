import { driver, lr2Inductor, passiveRadiator } from '@airspring/core/driver';
import { passiveRadiatorBox } from '@airspring/core/enclosure';
import { greatestLevel, radiatorTravelLimit } from '@airspring/core/limit';
import { compilePlan, valuesOf } from '@airspring/core/network';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { compiledSystem, type ProbeColumns, probeColumns } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { check } from '../ledger/check.js';
import { flat, largest, minus, scaled, worst } from './compare.js';
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
const radiator = passiveRadiator({ Sd: '450 cm²', fs: '16 Hz', Vas: '150 L', Qms: 7, Xmax: '12 mm' });
const lossless = passiveRadiatorBox({
  drivers: driver({ ...drivers, coil: undefined }),
  netVolume: '50 L',
  radiator,
});
const lossy = passiveRadiatorBox({
  drivers,
  netVolume: '50 L',
  radiator,
  count: 2,
  addedMass: '85 g',
  QL: 9,
  QA: 40,
  sourceResistance: '0.3 ohm',
});

/** The probes, read off the simulator; what leaves the box is the sum over cone, radiators and leak. */
async function simulated({ network }: typeof lossy) {
  const run = await simulate(network, 10, 1000, 41);
  const named = (name: string) => run.get(name) as ComplexColumn;
  const of = (name: string) => network.values[name] as number;
  const inwards = network.values.leak === undefined ? 0 : -1 / of('leak');
  const out = minus(
    scaled(named('v(cone)'), of('Sd')),
    minus(scaled(named('v(box)'), inwards), scaled(named('v(radiator)'), of('radiators'))),
  );
  const columns: ProbeColumns = {
    radiatedFlow: out,
    coneVelocity: named('v(cone)'),
    radiatorVelocity: named('v(radiator)'),
    current: scaled(named('i(v_drive)'), -1), // SPICE counts it into the plus pole
    terminalVoltage: named(network.values.sourceResistance === undefined ? 'v(drive)' : 'v(terminals)'),
  };
  return { frequencies: named('frequency').re, columns };
}

function byPlan({ network }: typeof lossy, frequencies: Float64Array): ProbeColumns {
  const plan = compilePlan(network.topology);
  const out = plan.probes.map(() => complexColumn(frequencies.length));
  expect(plan.network(valuesOf(plan.slots, network.values)).sweep(frequencies, out)).toBe(-1);
  return Object.fromEntries(plan.probes.map((name, i) => [name, out[i] as ComplexColumn]));
}

const runs = { lossless, lossy };
for (const [name, system] of Object.entries(runs)) {
  const { frequencies, columns } = await simulated(system);
  describe(`a circuit simulator and both roads agree, ${name}`, () => {
    test.each(Object.entries(columns))('%s', (probe, column) => {
      const polynomials = probeColumns(compiledSystem(system), frequencies);
      expect(worst(column, polynomials[probe] as ComplexColumn)).toBeLessThan(1e-9);
      expect(worst(column, byPlan(system, frequencies)[probe] as ComplexColumn)).toBeLessThan(1e-9);
    });
  });
}

const { frequencies, columns } = await simulated(lossy);
const { radiatedFlow, radiatorVelocity } = columns as Record<string, ComplexColumn>;
const program = {
  source: { key: 'ngspice', locator: '.ac of the netlist text, 10 Hz to 1 kHz' },
  status: 'derived',
  kind: 'program',
  given: { radiators: { value: 2, unit: '1' }, addedMass: { value: 0.085, unit: 'kg' }, QL: { value: 9, unit: '1' } },
} as const;
check('enclosure.passive-radiator.circuit', {
  ...program,
  formula: 'enclosure/passiveRadiatorBox',
  got: () => flat(probeColumns(compiledSystem(lossy), frequencies).radiatedFlow as ComplexColumn),
  expected: flat(radiatedFlow as ComplexColumn),
  unit: 'm³/s per V',
  tolerance: {
    absolute: 3e-14 * largest(radiatedFlow as ComplexColumn),
    why: 'of the largest value; both in double precision',
  },
});
check('limit.radiator-travel', {
  ...program,
  formula: 'limit/radiatorTravelLimit',
  got: () => greatestLevel(lossy, radiatorTravelLimit(lossy.spec.radiator), frequencies).driveVoltageRms,
  // x = v/ω, at most 12 mm peak.
  expected: Array.from(frequencies, (f, i) => {
    const { re, im } = radiatorVelocity as ComplexColumn;
    return ((0.012 / Math.SQRT2) * 2 * Math.PI * f) / Math.hypot(re[i] as number, im[i] as number);
  }),
  unit: 'V rms',
  tolerance: { relative: 5e-14, why: 'both in double precision' },
});
