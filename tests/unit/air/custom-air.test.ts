import {
  type Air,
  air,
  type CustomAirInput,
  customAir,
  readAir,
  standardAir,
  standardConditions,
} from '@airspring/core/air';
import { completeDriver, driverParameters } from '@airspring/core/driver';
import { compileLine, roundSection, tubeMass } from '@airspring/core/duct';
import { tuning } from '@airspring/core/vent';
import { expect, test } from 'vitest';

const fault = (code: string, path: string) =>
  expect.objectContaining({ faults: expect.arrayContaining([expect.objectContaining({ code, path })]) });

test('a medium handed in again is the same, within rounding', () => {
  const again = customAir(air({ temperature: '12 °C' }));
  expect(again).toEqual(air({ temperature: '12 °C' }));
  expect(customAir(JSON.parse(JSON.stringify(again)))).toEqual(again);
});

test.each([
  [{ heatCapacityRatio: 1.6 }, 'heatCapacityRatio'],
  [{ specificHeat: '1100 J/(kg·K)' }, 'specificHeat'],
  [{ prandtlNumber: 0.9 }, 'prandtlNumber'],
  [{ density: '1.7 kg/m³' }, 'speedOfSound'],
  [{ speedOfSound: '250 m/s' }, 'speedOfSound'],
] as const)('numbers that disagree are refused: %j', (change, field) => {
  const { warnings: _, ...numbers } = standardAir;
  expect(() => customAir({ ...numbers, ...(change as Partial<CustomAirInput>) })).toThrowError(
    fault('inconsistent', `air.${field}`),
  );
});

test('what is no medium is refused wherever one is asked for, and told how to make one', () => {
  const conditions = { temperature: '20 °C' } as unknown as Air;
  const driver = {
    Sd: '330 cm²',
    Mms: '86 g',
    Cms: '0.4 mm/N',
    Rms: '3.6 N·s/m',
    Re: '5.6 ohm',
    Bl: '14.3 T·m',
  } as const;
  const doors: (() => unknown)[] = [
    () => readAir(conditions),
    () => tuning({ vent: { diameter: '75 mm', length: '15 cm' }, netVolume: '40 L' }, conditions),
    () => tubeMass({ diameter: '75 mm', length: '15 cm' }, conditions),
    () => compileLine({ section: roundSection({ diameter: '75 mm' }), length: '20 cm' }, conditions),
    () => driverParameters(driver, conditions),
  ];
  for (const door of doors) {
    expect(door).toThrowError(fault('inconsistent', 'air'));
    expect(door).toThrowError(/air\(\{ temperature: '20 °C' \}\)/);
  }
  expect(() => completeDriver({ ...driver, sheetAir: conditions })).toThrowError(
    fault('inconsistent', 'driver.sheetAir'),
  );
  expect(() => readAir({ ...standardAir, density: Number.NaN } as Air)).toThrowError(
    fault('not-finite', 'air.density'),
  );
});

test('the standard air cannot be changed', () => {
  expect(() => Object.assign(standardAir, { density: 5 })).toThrowError(TypeError);
  expect(() => Object.assign(standardConditions, { temperature: 5 })).toThrowError(TypeError);
});
