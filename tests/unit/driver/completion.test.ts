import { completeDriver, type DriverData, deviationLimits } from '@airspring/core/driver';
import { expect, test } from 'vitest';
import { tenInchData } from '../../arbitrary/driver.js';

const completed = (data: DriverData) => {
  const result = completeDriver(data);
  if (!result.ok) throw new Error(result.because.map(({ text }) => text).join('\n'));
  return result;
};
const refused = (list: readonly object[]) =>
  expect.objectContaining({ faults: list.map((fault) => expect.objectContaining(fault)) });

test('a Thiele/Small set with area and resistance suffices', () => {
  const { driver, parameters, derived, deviations, blocked } = completed(tenInchData);
  expect(parameters.fs).toBeCloseTo(27, 10);
  expect(parameters.Qms).toBeCloseTo(3.6, 10);
  expect(parameters.Vas).toBeCloseTo(0.062, 12);
  expect(parameters.Vd).toBeCloseTo(330e-4 * 9e-3, 12);
  expect(driver).toMatchObject({ name: 'invented ten-inch', Re: 5.6, Pe: 200, depth: expect.closeTo(0.118, 12) });
  expect(derived.map(({ field }) => field)).toEqual(['coneDiameter', 'Qms', 'Cms', 'Mms', 'Rms', 'Bl']);
  expect(derived[1]).toMatchObject({ from: ['Qts', 'Qes'], by: 'Qms = Qts·Qes/(Qes − Qts)' });
  expect(deviations).toEqual([]);
  expect(blocked).toEqual([{ what: 'volume that the driver takes up in the box', missing: ['displacedVolume'] }]);
});

test('what cannot be answered says what it would take', () => {
  const { Xmax: _, depth: __, ...rest } = tenInchData;
  expect(completed(rest).blocked).toContainEqual({ what: 'greatest travel', missing: ['Xmax'] });
  expect(completed(rest).blocked).toContainEqual({ what: 'fit of the driver in the box', missing: ['depth'] });
});

test('redundant fields change nothing: the more trusted win, and the others are audited', () => {
  const { driver } = completed(tenInchData);
  const more = completed({ ...tenInchData, Qms: 3.61, Mms: '88 g', Bl: '14.3 T·m' });
  const audit = Object.fromEntries(
    more.deviations.map(({ field, verdict, relative }) => [field, { verdict, relative }]),
  );
  // Qms given outranks Qts; Mms and Bl are implied by Vas, Sd, fs and Qes.
  expect(Object.keys(audit)).toEqual(['Qts', 'Mms', 'Bl']);
  expect(audit.Qts?.verdict).toBe('consistent');
  expect(more.driver.Mms).toBeCloseTo(driver.Mms, 15);
  expect(more.driver.Bl).toBeCloseTo(driver.Bl, 12);
  for (const { given, implied, relative, verdict } of more.deviations) {
    expect(relative).toBeCloseTo(given / implied - 1, 15);
    expect(verdict).toBe(Math.abs(relative) <= deviationLimits.consistent ? 'consistent' : 'rounding');
  }
});

test('verdicts turn at the stated limits', () => {
  const { Mms } = completed(tenInchData).driver;
  const verdict = (factor: number) =>
    completed({ ...tenInchData, Mms: (Mms * factor) as never }).deviations[0]?.verdict;
  expect([1.0099, 0.9901].map(verdict)).toEqual(['consistent', 'consistent']);
  expect([1.0101, 0.9899, 1.0999, 0.9001].map(verdict)).toEqual(['rounding', 'rounding', 'rounding', 'rounding']);
  for (const factor of [1.1001, 0.8999]) {
    expect(() => verdict(factor)).toThrowError(refused([{ code: 'inconsistent', path: 'driver.Mms' }]));
  }
});

test('all contradictions at once', () => {
  expect(() => completeDriver({ ...tenInchData, Mms: '10 g', Bl: '3 T·m' })).toThrowError(
    refused([
      {
        code: 'inconsistent',
        path: 'driver.Mms',
        got: '10 g',
        expected: expect.stringMatching(/^about [\d.]+ g, from/),
      },
      { code: 'inconsistent', path: 'driver.Bl', got: '3 T·m' },
    ]),
  );
});

test.each([
  [{ Qts: 0.4, Qes: 0.4 }, 1],
  [{ Qts: 0.5, Qes: 0.4, Qms: 0.45 }, 2],
  [{ Qts: 0.5, Qms: 0.4 }, 1],
])('impossible quality factors %j', (Q, count) => {
  const fault = { code: 'inconsistent', path: 'driver.Qts' };
  expect(() => completeDriver({ ...Q, fs: '30 Hz' })).toThrowError(refused(Array(count).fill(fault)));
});

test('a Qts above the Qes that the other fields imply is refused too', () => {
  const motor = { fs: '27 Hz', Mms: '97 g', Re: '5.6 ohm', Bl: '15.2 T·m', Sd: '330 cm²' } as const;
  expect(() => completeDriver({ ...motor, Qts: 0.5 })).toThrowError(
    refused([{ code: 'inconsistent', path: 'driver.Bl' }]),
  );
});

test('too little: one reason, with the fewest fields that are enough', () => {
  const result = completeDriver({ fs: '27 Hz', Qes: 0.4, Qms: 3.6, Re: '5.6 ohm', Sd: '330 cm²' });
  const text = 'Mms, Cms, Rms and Bl cannot be derived. Add one of these: Vas, Mms, Cms, Rms or Bl.';
  expect(result).toEqual({ ok: false, because: [{ code: 'missing-data', text }] });
  const none = completeDriver({});
  expect(none.ok || none.because).toEqual([
    {
      code: 'missing-data',
      text: expect.stringMatching(/^Sd, Mms, Cms, Rms, Re and Bl cannot be derived\. .*Sd, Re, fs/),
    },
  ]);
});

test('a frame that falls through its hole is told in the units in which both were written', () => {
  const sizes = { outerDiameter: '10 in', cutoutDiameter: '262 mm' } as const;
  const expected = 'less than outerDiameter, 10 in';
  expect(() => completeDriver({ ...tenInchData, ...sizes })).toThrowError(
    refused([{ code: 'inconsistent', path: 'driver.cutoutDiameter', got: '262 mm', expected }]),
  );
});

test('a derived value that no driver has is refused, not passed on', () => {
  const absurd = { fs: '0.0001 Hz', Qes: 0.4, Qms: 4, Vas: '62 L', Sd: '330 cm²', Re: '5.6 ohm' } as const;
  expect(() => completeDriver(absurd)).toThrowError(
    refused([{ code: 'out-of-range', path: 'driver', got: expect.stringContaining('Mms of') }]),
  );
});
