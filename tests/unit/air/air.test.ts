import {
  air,
  moistAirDensity,
  speedOfSound,
  standardAir,
  standardAtmosphere,
  viscosity,
  waterVapourFraction,
} from '@airspring/core/air';
import { expect, test } from 'vitest';

test('standard air is that of 20 °C, 50 %, 101325 Pa, and survives JSON', () => {
  expect(air({ temperature: '20 °C', humidity: '50 %', pressure: '1013.25 hPa' })).toEqual(standardAir);
  expect(JSON.parse(JSON.stringify(standardAir))).toEqual(standardAir);
});

test('the examples of the docstrings', () => {
  const room = { temperature: '20 °C', pressure: '101325 Pa', humidity: '50 %' } as const;
  expect(moistAirDensity(room)).toBeCloseTo(1.1993, 4);
  expect(speedOfSound(room)).toBeCloseTo(343.99, 2);
  expect(viscosity('20 °C')).toBeCloseTo(18.13e-6, 8);
  expect(standardAtmosphere('1 km').pressure).toBeCloseTo(89876, 0);
  expect(air({ temperature: '25 °C', altitude: '600 m' }).density).toBeCloseTo(1.0954, 4);
});

test('altitude stands for its pressure', () => {
  const { pressure } = standardAtmosphere('1500 m');
  expect(air({ altitude: '1500 m' })).toEqual(air({ pressure }));
  expect(air({ altitude: '0 m' })).toEqual(standardAir);
  expect(standardAtmosphere('-430 m').pressure).toBeGreaterThan(101325);
});

test('refuses every fault at once', () => {
  const conditions = { temperature: '20 mm', humidity: '120 %', pressure: '1 bar', wind: 3 };
  expect(() => air(conditions as object)).toThrowError(
    expect.objectContaining({
      faults: expect.arrayContaining([
        expect.objectContaining({ code: 'unit', path: 'air.temperature' }),
        expect.objectContaining({ code: 'out-of-range', path: 'air.humidity' }),
        expect.objectContaining({ code: 'unit', path: 'air.pressure' }),
        expect.objectContaining({ code: 'unknown-field', path: 'air.wind' }),
      ]),
    }),
  );
});

test('refuses pressure together with altitude', () => {
  expect(() => air({ pressure: '950 hPa', altitude: '600 m' })).toThrowError(
    expect.objectContaining({ faults: [expect.objectContaining({ code: 'conflict', path: 'air.altitude' })] }),
  );
});

test.each([
  [{ temperature: '-61 °C' }, 'air.temperature'],
  [{ temperature: '61 °C' }, 'air.temperature'],
  [{ pressure: '19 kPa' }, 'air.pressure'],
  [{ pressure: '201 kPa' }, 'air.pressure'],
  [{ altitude: '11.1 km' }, 'air.altitude'],
] as const)('refuses %j: no formula speaks there', (conditions, path) => {
  expect(() => air(conditions)).toThrowError(
    expect.objectContaining({ faults: [expect.objectContaining({ code: 'out-of-range', path })] }),
  );
});

test('accepts both ends of what it accepts', () => {
  expect(air({ temperature: '-60 °C', pressure: '20 kPa' }).density).toBeGreaterThan(0);
  expect(air({ temperature: '60 °C', pressure: '200 kPa' }).density).toBeGreaterThan(0);
});

test('warns outside the published ranges, and not at their ends', () => {
  const warned = (conditions: Parameters<typeof air>[0]) => air(conditions).warnings.map(({ path }) => path);
  expect(warned({ temperature: '0 °C', pressure: '75 kPa' })).toEqual([]);
  expect(warned({ temperature: '30 °C', pressure: '102 kPa' })).toEqual([]);
  expect(warned({ temperature: '31 °C' })).toEqual(['temperature']);
  expect(warned({ altitude: '4000 m', temperature: '-5 °C' })).toEqual(['temperature', 'pressure']);
});

test('a missing field of a state is named', () => {
  expect(() => moistAirDensity({ temperature: '20 °C', pressure: '1 kPa' } as never)).toThrowError(
    expect.objectContaining({
      faults: [
        expect.objectContaining({ code: 'out-of-range', path: 'moistAir.pressure' }),
        expect.objectContaining({ code: 'empty', path: 'moistAir.humidity' }),
      ],
    }),
  );
});

test('air is never more than all vapour', () => {
  expect(waterVapourFraction({ temperature: '60 °C', pressure: '20 kPa', humidity: '100 %' })).toBeLessThanOrEqual(1);
});
