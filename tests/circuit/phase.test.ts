/** Phase of cone and vent, and slopes of complex probes, held against a circuit simulator. */

import { infiniteBaffle } from '@airspring/core/enclosure';
import type { Network } from '@airspring/core/network';
import type { ComplexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { compiledSystem, complexGradient, probeColumns, probePhase } from '@airspring/core/response';
import { check } from '../ledger/check.js';
import { ten, vented } from './cases.js';
import { flat, largest, scaled } from './compare.js';
import { simulate } from './simulator.js';

const [FROM, TO, POINTS] = [10, 1000, 41];
const program = {
  source: { key: 'ngspice', locator: '.ac of the netlist text, 10 Hz to 1 kHz' },
  status: 'derived',
  kind: 'program',
} as const;

/** Cone and vent of the vented box, read off the simulator; by values and frequencies a factor away. */
async function simulated(values: Network['values'] = vented.network.values, factor = 1) {
  const run = await simulate({ ...vented.network, values }, factor * FROM, factor * TO, POINTS);
  const named = (name: string) => run.get(name) as ComplexColumn;
  return {
    frequencies: named('frequency').re,
    coneVelocity: named('v(cone)'),
    ventAirSpeed: scaled(named('i(l_vent)'), values.perVentArea as number),
  };
}
const { frequencies, ...at } = await simulated();

/** Points on the circle, so that −π and π are one. */
const onCircle = (angles: Float64Array) => [...angles.map(Math.cos), ...angles.map(Math.sin)];
for (const [name, probe, integrated] of [
  ['cone-velocity', 'coneVelocity', false],
  ['cone-displacement', 'coneVelocity', true],
  ['vent', 'ventAirSpeed', false],
] as const) {
  const { re, im } = at[probe];
  check(`response.phase.${name}`, {
    ...program,
    formula: 'response/probePhase',
    given: { probe: { value: probe, unit: '' }, integrated: { value: String(integrated), unit: '' } },
    got: () => onCircle(probePhase(vented, frequencies, { probe, integrated })),
    expected: onCircle(re.map((x, i) => Math.atan2(im[i]!, x) - (integrated ? Math.PI / 2 : 0))),
    unit: 'cosine and sine',
    tolerance: { absolute: 3e-14, why: 'both in double precision; the cone hardly moves at the tuning' },
  });
}

/** The slope by ln of one number, or of the frequency, from four runs of the simulator; the error is of the fourth power. */
async function slope(
  name: string | undefined,
  probe: keyof typeof at,
  point: number,
): Promise<readonly [number, number]> {
  const step = 5e-4;
  const weights = [
    [-2, 1],
    [-1, -8],
    [1, 8],
    [2, -1],
  ] as const;
  const sum: [number, number] = [0, 0];
  for (const [steps, weight] of weights) {
    const factor = Math.exp(steps * step);
    const { values } = vented.network;
    const run =
      name === undefined
        ? await simulated(values, factor)
        : await simulated({ ...values, [name]: (values[name] as number) * factor });
    sum[0] += (weight * run[probe].re[point]!) / (12 * step);
    sum[1] += (weight * run[probe].im[point]!) / (12 * step);
  }
  return sum;
}
const elements = ['Re', 'Bl', 'Mms', 'Cms', 'Rms', 'Sd', 'Cab', 'vent', 'leak', 'absorption', 'ventLoss'];
for (const [probe, point, names] of [
  ['coneVelocity', 5, elements],
  ['ventAirSpeed', 12, [...elements, 'perVentArea']],
] as const) {
  const slopes: (readonly [number, number])[] = [];
  for (const name of [undefined, ...names]) slopes.push(await slope(name, probe, point));
  const frequency = frequencies[point]!;
  const value = [at[probe].re[point]!, at[probe].im[point]!];
  check(`response.complex-gradient.${probe}`, {
    ...program,
    formula: 'response/complexGradient',
    source: { ...program.source, locator: 'differences of .ac runs with each value by exp(±0.0005), exp(±0.001)' },
    given: { probe: { value: probe, unit: '' }, frequency: { value: frequency, unit: 'Hz' } },
    got: () => {
      const found = complexGradient(vented, probe, si('frequency', frequency));
      if (!found.ok) return [];
      const { byElement, byFrequency } = found;
      return [found.value, byFrequency, ...names.map((name) => byElement[name]!)].flatMap(({ re, im }) => [re, im]);
    },
    expected: [...value, ...slopes.flat()],
    unit: 'm/s per V: value, by frequency, by each element; real, imaginary',
    tolerance: { absolute: 5e-11 * Math.hypot(...value), why: 'differences over 0.0005 of values in double precision' },
  });
}

const walled = infiniteBaffle({ drivers: ten, sourceResistance: si('resistance', 0.3) });
const run = await simulate(walled.network, FROM, TO, POINTS);
const cone = run.get('v(cone)') as ComplexColumn;
check('enclosure.circuit.infinite-baffle', {
  ...program,
  formula: 'enclosure/infiniteBaffle',
  given: { probe: { value: 'coneVelocity', unit: 'm/s per V' } },
  got: () => {
    const system = infiniteBaffle({ drivers: ten, sourceResistance: si('resistance', 0.3) });
    return flat(probeColumns(compiledSystem(system), frequencies).coneVelocity as ComplexColumn);
  },
  expected: flat(cone),
  unit: 'm/s per V',
  tolerance: { absolute: 1e-15 * largest(cone), why: 'of the largest value; both in double precision' },
});
