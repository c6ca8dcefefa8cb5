import { entranceLoss } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';

const ratio = (most: number) => fc.double({ min: 0, max: most, noNaN: true });
const loss = (rounding: number, wall?: number) =>
  entranceLoss({
    diameter: '100 mm',
    ...(rounding > 1e-4 && { rounding: si('length', 0.1 * rounding) }),
    ...(wall !== undefined && wall > 1e-4 && { wall: si('length', 0.1 * wall) }),
  });

test.prop([ratio(3), fc.option(ratio(0.2), { nil: undefined })])(
  'the least is no more than the middle, and the middle no more than the greatest, at any rounding and wall',
  (rounding, wall) => {
    const { low, nominal, high } = loss(rounding, wall);
    expect(low).toBeLessThanOrEqual(nominal);
    expect(nominal).toBeLessThanOrEqual(high);
  },
);

test.prop([ratio(2), ratio(2)])('a rounder edge never loses more', (a, b) => {
  const [sharper, rounder] = [loss(Math.min(a, b)), loss(Math.max(a, b))];
  for (const which of ['low', 'nominal', 'high'] as const)
    expect(rounder[which]).toBeLessThanOrEqual(sharper[which] + 1e-12);
});
