import { airSpeedLimit, currentLimit, type Limit, voltageLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { describe, expectTypeOf, test } from 'vitest';

describe('a limit', () => {
  test('is rms, of its kind', () => {
    expectTypeOf(airSpeedLimit('12 m/s')).toEqualTypeOf<Limit>();
    // @ts-expect-error a peak is not an rms value
    airSpeedLimit(si('airSpeedPeak', 17));
    // @ts-expect-error volts are no current
    currentLimit('5 V');
    // @ts-expect-error a bare number says no unit
    voltageLimit(20);
  });
});
