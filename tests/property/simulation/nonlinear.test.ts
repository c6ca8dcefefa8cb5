/** Any driver, any curves, any drive: no number that is none, energy that adds up, and a report that tells what failed. */

import { isInputError } from '@airspring/core/fault';
import { thermalModel } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import {
  compileLinear,
  compileNonlinear,
  forceFactorCurve,
  inductanceCurve,
  type NonlinearOptions,
  quadraticVentLoss,
  stiffnessCurve,
  stop,
} from '@airspring/transient/simulation';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';
import { closed, plainVented, vented } from '../../unit/transient/boxes.js';

const systems = { vented, plainVented, closed };
const names = ['vented', 'plainVented', 'closed'] as const;
const ratio = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const mm = (min: number, max: number) => ratio(min, max).map((x) => si('displacementPeak', x / 1000));
const polynomial = fc.record({ reach: mm(1, 30), coefficients: fc.array(ratio(-0.3, 0.3), { maxLength: 4 }) });
const positiveOrNone = <T>(made: fc.Arbitrary<() => T>) =>
  made.map((make) => {
    try {
      return make();
    } catch (error) {
      if (isInputError(error)) return undefined;
      throw error;
    }
  });
const curves = fc.record({
  forceFactor: positiveOrNone(polynomial.map((input) => () => forceFactorCurve(input))),
  stiffness: positiveOrNone(polynomial.map((input) => () => stiffnessCurve(input))),
  inductance: positiveOrNone(polynomial.map((input) => () => inductanceCurve(input))),
  stop: fc.option(fc.record({ outward: mm(1, 20), inward: mm(1, 20), stiffness: ratio(1, 10_000) }).map(stop), {
    nil: undefined,
  }),
  heat: fc.option(
    fc
      .tuple(ratio(0.1, 5), ratio(0.01, 60), ratio(0.1, 5), ratio(1, 3000))
      .map(([coilRise, coil, magnetRise, magnet]) =>
        thermalModel({
          coilToMagnet: si('thermalResistance', coilRise),
          magnetToAir: si('thermalResistance', magnetRise),
          coilTime: si('time', coil),
          magnetTime: si('time', magnet),
        }),
      ),
    { nil: undefined },
  ),
});
const loss = fc.record({ outward: ratio(0.01, 20), inward: ratio(0.01, 20) });
const drives = fc.record({
  volts: fc.oneof(ratio(0.01, 60), ratio(60, 20_000)),
  frequency: ratio(1, 3000),
  second: ratio(1, 20_000),
  rate: fc.constantFrom(8000, 44_100, 48_000, 192_000),
});
const given = <T extends object>(record: T) =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
const sines = ({
  volts,
  frequency,
  second,
  rate,
}: {
  volts: number;
  frequency: number;
  second: number;
  rate: number;
}) =>
  Float64Array.from(
    { length: 400 },
    (_, n) =>
      volts * (Math.sin((2 * Math.PI * frequency * n) / rate) + 0.5 * Math.sin((2 * Math.PI * second * n) / rate)),
  );

test.prop([fc.constantFrom(...names), curves, loss, drives, fc.constantFrom(1, 2, 4)], {
  numRuns: fuzzRuns,
})(
  'energy adds up, every number is one, and every sample is solved or told',
  (name, { inductance, ...chosen }, K, drive, oversampling) => {
    const system = systems[name];
    const outputs = ['pressure', 'displacement', 'current', ...(system === closed ? [] : ['ventAirSpeed'])];
    const options: NonlinearOptions = {
      ...given(chosen),
      ...(inductance !== undefined && system !== plainVented && { inductance }),
      ...(system !== closed && { losses: { vent: quadraticVentLoss({ area: '60 cm²', ...K }) } }),
      ...{ sampleRate: si('frequency', drive.rate), outputs, oversampling, balance: true },
    };
    const { run, start } = compileNonlinear(system, options);
    const out = outputs.map(() => new Float64Array(400));
    const report = run(start(), sines(drive), out);
    for (const column of out) expect(column.every(Number.isFinite)).toBe(true);
    expect(report.ok).toBe(report.unsolved === 0);
    if (!report.ok) return;
    const { given: put, lost, stored } = report.balance!;
    // What flows to and fro can be many times what stays: rounding is of that.
    expect(Math.abs(put - lost - stored)).toBeLessThanOrEqual(1e-10 * Math.max(Math.abs(put), lost, stored));
  },
);

test.prop([fc.constantFrom(...names), ratio(1000, 400_000), fc.integer({ min: 1, max: 97 })], {
  numRuns: Math.min(fuzzRuns, 1000),
})('a linear run is finite, and the same by blocks of any length', (name, rate, block) => {
  const system = systems[name];
  const { run, start } = compileLinear(system, {
    sampleRate: si('frequency', rate),
    outputs: ['pressure', 'displacement'],
  });
  const drive = Float64Array.from({ length: 300 }, (_, n) => Math.sin(n ** 1.5));
  const [whole, parts] = [0, 1].map(() => [new Float64Array(300), new Float64Array(300)]) as [
    Float64Array[],
    Float64Array[],
  ];
  run(start(), drive, whole);
  const states = start();
  for (let from = 0; from < 300; from += block) {
    const part = (column: Float64Array) => column.subarray(from, from + block);
    run(states, part(drive), parts.map(part));
  }
  expect(parts).toEqual(whole);
  expect(whole.every((column) => column.every(Number.isFinite))).toBe(true);
});
