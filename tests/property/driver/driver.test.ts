import { standardAir } from '@airspring/core/air';
import {
  coilImpedance,
  completeDriver,
  type Driver,
  type DriverData,
  driver,
  driverParameters,
  freeAirImpedance,
  group,
  levelHalfSpace,
  referenceEfficiency,
  relations,
} from '@airspring/core/driver';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { absurdDriverArbitrary, absurdDriverDataArbitrary, accepted, driverArbitrary } from '../../arbitrary/driver.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';

const close = (got: number, expected: number, relative = 1e-12) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
const physical = ['Sd', 'Mms', 'Cms', 'Rms', 'Re', 'Bl'] as const;
const stiffness = standardAir.density * standardAir.speedOfSound ** 2;

/** Every related field of a driver: the sheet it would have. */
const sheet = (one: Driver) => {
  const { fs, Qes, Qms, Qts, Vas } = driverParameters(one);
  const { Sd, Mms, Cms, Rms, Re, Bl } = one;
  const coneDiameter = si('length', Math.sqrt((4 * Sd) / Math.PI));
  return { Sd, coneDiameter, Re, fs, Qes, Qms, Qts, Vas, Mms, Cms, Rms, Bl };
};

test.prop([driverArbitrary])('the Thiele/Small set and back is the same driver', (one) => {
  const { fs, Qes, Qms, Vas } = driverParameters(one);
  const result = completeDriver({
    ...one,
    Mms: undefined,
    Cms: undefined,
    Rms: undefined,
    Bl: undefined,
    fs,
    Qes,
    Qms,
    Vas,
  } as never);
  if (!result.ok) throw new Error('a full set was not enough');
  for (const field of physical) close(result.driver[field], one[field]);
  expect(Object.keys(result.driver).sort()).toEqual(Object.keys(one).sort());
});

test.prop([driverArbitrary])('the physical set is taken as it is', (one) => {
  const result = completeDriver(one);
  expect(result.ok && result.driver).toEqual(one);
});

test.prop([driverArbitrary])('each relation holds for each driver', (one) => {
  const known = sheet(one);
  for (const { target, formula } of relations) close(formula(known, stiffness), known[target], 1e-9);
});

test.prop([driverArbitrary])('a whole sheet is consistent in every redundant field', (one) => {
  const result = completeDriver(sheet(one));
  if (!result.ok) throw new Error('a full sheet was not enough');
  expect(result.deviations.map(({ field }) => field)).toEqual(['coneDiameter', 'Qts', 'Mms', 'Cms', 'Rms', 'Bl']);
  for (const { relative } of result.deviations) expect(Math.abs(relative)).toBeLessThan(1e-9);
});

test.prop([
  driverArbitrary,
  fc.subarray(['Sd', 'Re', 'fs', 'Qes', 'Qms', 'Qts', 'Vas', 'Mms', 'Cms', 'Rms', 'Bl'] as const),
])('any part of a sheet gives that driver or says what is missing, in any order of the fields', (one, fields) => {
  const whole = sheet(one);
  const part = (names: readonly (keyof typeof whole)[]): DriverData =>
    Object.fromEntries(names.map((name) => [name, whole[name]]));
  const result = completeDriver(part(fields));
  expect(completeDriver(part([...fields].reverse()))).toEqual(result);
  if (result.ok) for (const field of physical) close(result.driver[field], one[field], 1e-9);
  else {
    expect(result.because).toHaveLength(1);
    // Each way out that the reason names completes the driver.
    const tail = /\. Add (?:one of these: )?(.+)\.$/.exec(result.because[0]?.text ?? '')?.[1] ?? '';
    const ways = tail.includes(' and ') ? tail.split('; or ') : tail.split(/, | or /);
    expect(tail).not.toBe('');
    for (const way of ways) {
      expect(completeDriver(part([...fields, ...(way.split(/, | and /) as typeof fields)])).ok).toBe(true);
    }
  }
});

test.prop([driverArbitrary])('both forms of the efficiency agree', (one) => {
  const { referenceEfficiency: efficiency } = driverParameters(one);
  const { Bl, Sd, Mms, Re } = one;
  close(
    (standardAir.density * Bl ** 2 * Sd ** 2) / (2 * Math.PI * standardAir.speedOfSound * Mms ** 2 * Re),
    efficiency,
    1e-11,
  );
});

test.prop([driverArbitrary])('scaling: lengths × 2, masses × 3, the field × 5', (one) => {
  // The mass unit enters force, the length unit area; ohms follow as (T·m)²/(N·s/m).
  const scaled = {
    ...one,
    Sd: one.Sd * 4,
    Mms: one.Mms * 3,
    Rms: one.Rms * 3,
    Cms: one.Cms / 3,
    Bl: one.Bl * 5,
    Re: (one.Re * 25) / 3,
  };
  const before = driverParameters(one);
  const after = driverParameters(scaled as Driver);
  for (const field of ['fs', 'Qes', 'Qms', 'Qts'] as const) close(after[field], before[field]);
  close(after.Vas, (before.Vas * 16) / 3);
});

test.prop([driverArbitrary, fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 8 })])(
  'a group keeps fs and Q, multiplies Vas, and its terminals see series over parallel of one impedance',
  (one, series, parallel) => {
    const { equivalent, count } = group(one, { series, parallel });
    const before = driverParameters(one);
    const after = driverParameters(equivalent);
    for (const field of ['fs', 'Qes', 'Qms', 'Qts'] as const) close(after[field], before[field]);
    close(after.Vas, before.Vas * count);
    const grid = logarithmicGrid(5, 5000, 20);
    const alone = freeAirImpedance(one, grid);
    const together = freeAirImpedance(equivalent, grid);
    for (let i = 0; i < grid.length; i++) {
      const size = (Math.hypot(alone.re[i]!, alone.im[i]!) * series) / parallel;
      expect(Math.abs(together.re[i]! - (alone.re[i]! * series) / parallel)).toBeLessThan(1e-9 * size);
      expect(Math.abs(together.im[i]! - (alone.im[i]! * series) / parallel)).toBeLessThan(1e-9 * size);
    }
  },
);

test.prop([driverArbitrary])('an impedance is passive, and Re + Bl²/Rms at fs', (one) => {
  const { fs } = driverParameters(one);
  const { re } = freeAirImpedance({ ...one }, logarithmicGrid(1, 20000, 50));
  for (const resistance of re) expect(resistance).toBeGreaterThan(0);
  const coil = coilImpedance(one, [fs]);
  const whole = freeAirImpedance(one, [fs]);
  close(whole.re[0]! - coil.re[0]!, one.Bl ** 2 / one.Rms, 1e-9);
});

const finite = (value: unknown): void => {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  else if (value instanceof Float64Array) value.forEach(finite);
  else if (typeof value === 'object' && value !== null) Object.values(value).forEach(finite);
};
/** Finite numbers, or a refusal. */
const sound = (act: () => unknown) => {
  try {
    finite(act());
  } catch (error) {
    if ((error as { code?: unknown }).code !== 'airspring-input') throw error;
  }
};

test.prop([absurdDriverArbitrary, fc.integer({ min: -1, max: 70 }), fc.boolean()], { numRuns: fuzzRuns })(
  'fuzz: records of any accepted magnitude',
  (one, n, isobaric) => {
    sound(() => driver(one));
    sound(() => driverParameters(one));
    sound(() => group(one, { series: n, parallel: 2, isobaric }));
    sound(() => coilImpedance(one, [1e-4, 1, 1e7]));
    sound(() => freeAirImpedance(one, [1e-4, 1, 1e7]));
    sound(() => completeDriver(one));
  },
);

test.prop([absurdDriverDataArbitrary], { numRuns: fuzzRuns })('fuzz: sheets of any accepted magnitude', (data) =>
  sound(() => completeDriver(data)),
);

test.prop([accepted('frequency'), accepted('volume'), accepted('ratio'), accepted('power')], { numRuns: fuzzRuns })(
  'fuzz: efficiency and level',
  (fs, Vas, Qes, power) => {
    sound(() => referenceEfficiency({ fs, Vas, Qes }));
    sound(() => levelHalfSpace(power));
  },
);

test.prop([fc.anything()], { numRuns: fuzzRuns })('fuzz: anything at all is refused, not thrown at', (anything) => {
  sound(() => completeDriver(anything as never));
  sound(() => driver(anything as never));
  sound(() => group({} as never, anything as never));
});
