import type { Driver } from '@airspring/core/driver';
import { type System, ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { levelGradient, respond } from '@airspring/core/response';
import { sensitivity } from '@airspring/core/tolerance';
import { expect } from 'vitest';
import { bassFrequency, ventedBoxArbitrary } from '../../arbitrary/box.js';
import { driverArbitrary } from '../../arbitrary/driver.js';
import { fc, test } from '../../arbitrary/property.js';

const make =
  (drivers: Driver) =>
  ({ fb, volume, QL, QA, Rg, density }: Record<'fb' | 'volume' | 'QL' | 'QA' | 'Rg' | 'density', number>): System => {
    const air = ventedBox({ drivers, netVolume: '10 L', fb: '30 Hz' }).air;
    return ventedBox(
      {
        drivers,
        netVolume: si('volume', volume),
        fb: si('frequency', fb),
        QL,
        QA,
        sourceResistance: si('resistance', Rg),
      },
      { ...air, density: si('density', density) },
    ) as System;
  };
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test.prop(
  [
    driverArbitrary,
    size(15, 70),
    size(5e-3, 0.3),
    size(3, 40),
    size(5, 200),
    size(0.05, 3),
    size(1, 1.3),
    bassFrequency,
  ],
  { numRuns: 30 },
)(
  'what a small change of an input does is what it says, of every input',
  (drivers, fb, volume, QL, QA, Rg, density, f) => {
    const inputs = { fb, volume, QL, QA, Rg, density };
    const found = sensitivity(make(drivers), inputs, (system) => levelGradient(system, f));
    if (!found.ok) throw new Error('undamped');
    const level = (change: Partial<typeof inputs>) =>
      respond(make(drivers)({ ...inputs, ...change }), [f]).levelHalfSpace[0]!;
    expect(found.value).toBeCloseTo(level({}), 9);
    for (const [name, value] of Object.entries(inputs)) {
      const h = 1e-4;
      const slope = (level({ [name]: value * (1 + h) }) - level({ [name]: value * (1 - h) })) / (2 * h);
      expect(Math.abs(found.byInput[name]! * value - slope), name).toBeLessThan(2e-5 * Math.max(1, Math.abs(slope)));
      expect(found.byPercent[name]! * 100 - found.byInput[name]! * value).toBeCloseTo(0, 9);
    }
  },
);

test.prop([ventedBoxArbitrary, size(0.2, 5), bassFrequency], { numRuns: 30 })(
  'another unit of an input: the slope by it scales, what one per cent does stays',
  ({ drivers }, unit, f) => {
    const of = (scale: number) =>
      sensitivity(
        ({ fb }) => ventedBox({ drivers, netVolume: '50 L', fb: si('frequency', fb * scale), QL: 7 }) as System,
        { fb: 30 / scale },
        (system) => levelGradient(system, f),
      );
    const [one, other] = [of(1), of(unit)];
    if (!one.ok || !other.ok) throw new Error('undamped');
    const floor = 1e-9 * Math.max(1, Math.abs(one.byPercent.fb!));
    expect(Math.abs(other.byPercent.fb! - one.byPercent.fb!)).toBeLessThan(floor);
    expect(Math.abs(other.byInput.fb! / unit - one.byInput.fb!)).toBeLessThan(floor * 10);
  },
);
