import {
  type AirSpeedPeak,
  type AirSpeedRmsInput,
  type ConeAreaInput,
  format,
  type Length,
  type LengthInput,
  optional,
  positive,
  type RatioInput,
  type ResistanceInput,
  read,
  readFields,
  si,
  type TemperatureInput,
  type VolumeInput,
} from '@airspring/core/quantity';
import { expectTypeOf, test } from 'vitest';

test('a text must carry a unit of its kind', () => {
  expectTypeOf<'62 mm'>().toExtend<LengthInput>();
  expectTypeOf<'2.45 in'>().toExtend<LengthInput>();
  // @ts-expect-error a volume is no length
  const a: LengthInput = '24 L';
  // @ts-expect-error no space
  const b: VolumeInput = '24L';
  // @ts-expect-error a comma
  const c: VolumeInput = '24,5 L';
  // @ts-expect-error a bare number says no unit
  const d: VolumeInput = 24;
  // @ts-expect-error any text may be anything
  const e: VolumeInput = 'x' as string;
  // @ts-expect-error degrees are temperatures only
  const f: ResistanceInput = '20 °C';
  const g: TemperatureInput = '20 °C';
  void [a, b, c, d, e, f, g];
});

test('kinds of one dimension stay apart', () => {
  const peak: AirSpeedPeak = si('airSpeedPeak', 12);
  // @ts-expect-error a peak is no rms value
  const rms: AirSpeedRmsInput = peak;
  // @ts-expect-error a cross-section is no cone area
  const cone: ConeAreaInput = si('area', 0.03);
  void [rms, cone];
});

test('plain ratios are plain numbers', () => {
  expectTypeOf<0.38>().toExtend<RatioInput>();
  expectTypeOf<'38 %'>().toExtend<RatioInput>();
});

test('reading gives the kind back', () => {
  expectTypeOf(read('length', '62 mm')).toEqualTypeOf<Length>();
  const vent = readFields('vent', {}, { length: positive('length'), wall: optional(positive('length')) });
  expectTypeOf(vent.length).toEqualTypeOf<Length>();
  expectTypeOf(vent.wall).toEqualTypeOf<Length | undefined>();
  // @ts-expect-error no such unit of a length
  format('length', 1, 'L');
});
