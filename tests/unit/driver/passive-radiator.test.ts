import { passiveRadiator } from '@airspring/core/driver';
import { describe, expect, test } from 'vitest';

/** Invented. */
const sheet = { Sd: '330 cm²', fs: '17 Hz', Vas: '110 L', Qms: 6 } as const;
const physical = { Sd: '330 cm²', Mms: '120 g', Cms: '0.7 mm/N', Rms: '2 kg/s' } as const;
const faulty = (...faults: object[]) =>
  expect.objectContaining({ code: 'airspring-input', faults: faults.map((one) => expect.objectContaining(one)) });

test('the example, and a record that was read is read again as it is', () => {
  const read = passiveRadiator({ ...sheet, Xmax: '14 mm', outerDiameter: '260 mm', cutoutDiameter: '232 mm' });
  expect(read.Mms).toBeCloseTo(0.123, 3);
  expect(read).toMatchObject({ Xmax: 0.014, outerDiameter: 0.26, cutoutDiameter: 0.232 });
  expect(passiveRadiator(JSON.parse(JSON.stringify(read)))).toEqual(read);
  expect(Object.keys(read)).not.toContain('fs');
});
test.each([
  [{ ...physical }],
  [{ ...physical, Sd: undefined, coneDiameter: '205 mm' } as const],
  [{ Sd: '330 cm²', fs: '17 Hz', Mms: '120 g', Qms: 6 } as const],
  [{ Sd: '330 cm²', Mms: '120 g', Cms: '0.7 mm/N', Qms: 6 } as const],
  [{ Vas: '110 L', Mms: '120 g', Cms: '0.7 mm/N', Rms: '2 kg/s' } as const],
])('%j suffices', (input) => {
  const { Sd, Mms, Cms, Rms } = passiveRadiator(input);
  for (const value of [Sd, Mms, Cms, Rms]) expect(value).toBeGreaterThan(0);
});

describe('refuses', () => {
  test('what does not suffice, with what would do, and nothing of a motor', () => {
    const { Qms: _, ...lossless } = sheet;
    expect(() => passiveRadiator(lossless, 'box.radiator')).toThrow(
      faulty({
        code: 'empty',
        path: 'box.radiator',
        expected: 'data from which Rms follows',
        remedy: 'Rms cannot be derived. Add one of these: Qms or Rms.',
      }),
    );
    expect(() => passiveRadiator({ Sd: '330 cm²', fs: '17 Hz' })).toThrow(/Vas/);
    expect(() => passiveRadiator({ Sd: '330 cm²', fs: '17 Hz' })).not.toThrow(/Qes|Qts|Bl|Re\b/);
  });
  test('what contradicts itself, in the unit of its reader', () => {
    expect(() => passiveRadiator({ ...sheet, Mms: '200 g' })).toThrow(
      faulty({
        code: 'inconsistent',
        path: 'radiator.Mms',
        got: '200 g',
        expected: expect.stringMatching(/^about 123\.1 g/),
      }),
    );
    expect(passiveRadiator({ ...sheet, Mms: '125 g' })).toEqual(passiveRadiator(sheet));
    expect(() => passiveRadiator({ ...sheet, outerDiameter: '20 cm', cutoutDiameter: '21 cm' })).toThrow(
      faulty({ code: 'inconsistent', path: 'radiator.cutoutDiameter' }),
    );
  });
  test('a motor, and each bad field at its path', () => {
    expect(() => passiveRadiator({ ...sheet, Bl: '5 T·m' } as never)).toThrow(
      faulty({ code: 'unknown-field', path: 'radiator.Bl' }),
    );
    expect(() => passiveRadiator({ ...sheet, fs: '17' as never, Vas: '-1 L', Xmax: Number.NaN as never })).toThrow(
      faulty(
        { code: 'unit', path: 'radiator.fs' },
        { code: 'not-positive', path: 'radiator.Vas' },
        { code: 'not-finite', path: 'radiator.Xmax' },
      ),
    );
    for (const nothing of [null, 3, 'ten', []])
      expect(() => passiveRadiator(nothing as never)).toThrow(faulty({ code: 'empty' }));
  });
  test('a derived value outside what is accepted, told of the fields that lead to it', () => {
    expect(() => passiveRadiator({ ...sheet, Qms: 1e9 })).toThrow(
      faulty({ code: 'out-of-range', path: 'radiator', remedy: expect.stringContaining('Qms') }),
    );
  });
});
