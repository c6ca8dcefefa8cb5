import { type DriverInput, driver, lossyInductor } from '@airspring/core/driver';
import { expect, test } from 'vitest';

const one: DriverInput = {
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
};
const faults = (list: readonly object[]) =>
  expect.objectContaining({ faults: list.map((f) => expect.objectContaining(f)) });

test('a coil needs its formula, and its scaling for groups of drivers', () => {
  const { scaled: _, ...unscaled } = lossyInductor({ K: 0.02, exponent: 0.7 });
  expect(() => driver({ ...one, coil: unscaled as never })).toThrow(/a model with impedance\(\), scaled\(\)/);
});

test('texts become SI numbers, and the record survives JSON', () => {
  const read = driver({ ...one, name: 'x', Le: '0.9 mH', Xmax: '9 mm', Pe: '200 W', displacedVolume: '2 L' });
  expect(read).toMatchObject({ Rms: 3.6, Re: 5.6, Bl: 14.3, Pe: 200 });
  const scaled = { Sd: 0.033, Mms: 0.086, Cms: 0.0004, Le: 0.0009, Xmax: 0.009, displacedVolume: 0.002 };
  for (const [field, value] of Object.entries(scaled)) expect(read[field as 'Sd']).toBeCloseTo(value, 15);
  expect(driver(JSON.parse(JSON.stringify(read)))).toEqual(read);
});

test('a field not given is absent, not undefined', () => expect(Object.keys(driver(one))).toHaveLength(6));

test('every fault at once, each at its path', () => {
  expect(() => driver({ ...one, Sd: '0 cm²', Re: '5.6' as never, Bll: 3 } as never)).toThrowError(
    faults([
      { code: 'unknown-field', path: 'driver.Bll' },
      { code: 'not-positive', path: 'driver.Sd' },
      { code: 'unit', path: 'driver.Re' },
    ]),
  );
});

test('Le beside a coil, and a frame that falls through its hole, are refused', () => {
  const bad = {
    ...one,
    Le: '1 mH',
    coil: lossyInductor({ K: 0.02, exponent: 0.7 }),
    outerDiameter: '232 mm',
    cutoutDiameter: '262 mm',
  } as const;
  expect(() => driver(bad)).toThrowError(
    faults([
      { code: 'conflict', path: 'driver.Le' },
      { code: 'inconsistent', path: 'driver.cutoutDiameter' },
    ]),
  );
  expect(() => driver({ ...one, name: '' })).toThrowError(faults([{ code: 'empty', path: 'driver.name' }]));
});
