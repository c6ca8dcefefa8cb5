import type { Driver } from '@airspring/core/driver';
import { type ClosedBoxSpec, closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { describe, expectTypeOf, test } from 'vitest';

declare const drivers: Driver;

describe('a box', () => {
  test('takes text with a unit of its kind, or a branded number', () => {
    expectTypeOf(closedBox({ drivers, netVolume: '40 L' })).toEqualTypeOf<System<ClosedBoxSpec>>();
    expectTypeOf(closedBox({ drivers, netVolume: si('volume', 0.04) }).spec.fillGain).toEqualTypeOf<number>();
    // @ts-expect-error a length is no volume
    closedBox({ drivers, netVolume: '40 mm' });
    // @ts-expect-error a bare number says no unit
    closedBox({ drivers, netVolume: 0.04 });
    // @ts-expect-error a closed box has no tuning
    closedBox({ drivers, netVolume: '40 L', fb: '30 Hz' });
    // @ts-expect-error a vented box has one
    ventedBox({ drivers, netVolume: '40 L' });
    // @ts-expect-error the area of a cone is not the section of a vent
    ventedBox({ drivers, netVolume: '40 L', fb: '30 Hz', ventArea: si('coneArea', 0.03) });
  });
});
