import { completeDriver, type Driver, type DriverInput, driver, group } from '@airspring/core/driver';
import type { Mass } from '@airspring/core/quantity';
import { expectTypeOf, test } from 'vitest';

const one = { Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Re: '5.6 ohm', Bl: '14.3 T·m' } as const;

test('a driver read is an input again', () => {
  expectTypeOf(driver(one)).toEqualTypeOf<Driver>();
  expectTypeOf<Driver>().toExtend<DriverInput>();
  expectTypeOf(group(driver(one)).equivalent.Mms).toEqualTypeOf<Mass>();
});

test('a field that is undefined is one left out', () => {
  const Le = undefined as '1 mH' | undefined;
  expectTypeOf(driver({ ...one, Le, name: undefined })).toEqualTypeOf<Driver>();
  completeDriver({ fs: '27 Hz', Qts: undefined });
});

test('what must not compile', () => {
  // @ts-expect-error a bare number says no unit
  driver({ ...one, Mms: 86 });
  // @ts-expect-error a unit of another kind
  driver({ ...one, Mms: '86 mm' });
  // @ts-expect-error a field that nobody reads
  completeDriver({ fs: '27 Hz', resonance: '27 Hz' });
  // @ts-expect-error a completed driver may be impossible
  completeDriver({ fs: '27 Hz' }).driver;
});
