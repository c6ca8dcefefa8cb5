import { type EndCorrection, flanged } from '@airspring/core/duct';
import type { AirSpeedPeak, Length } from '@airspring/core/quantity';
import { airSpeedPeak, airSpeedRms, effectiveLength, type RoundVentInput, tuning } from '@airspring/core/vent';
import { expectTypeOf, test } from 'vitest';

test('a vent takes lengths, and end corrections that are functions with sources', () => {
  expectTypeOf(flanged).toExtend<EndCorrection>();
  // @ts-expect-error: a unit of another kind
  const wrongUnit: RoundVentInput = { diameter: '75 L', length: '150 mm' };
  // @ts-expect-error: a bare number has no unit
  const bare: RoundVentInput = { diameter: 0.075, length: '150 mm' };
  // @ts-expect-error: an end correction names its sources
  const unsourced: RoundVentInput = { diameter: '75 mm', length: '150 mm', innerEnd: () => 0.02 };
  void [wrongUnit, bare, unsourced];
});

test('results say what they are', () => {
  const vent = { diameter: '75 mm', length: '150 mm' } as const;
  expectTypeOf(effectiveLength({ vent })).toEqualTypeOf<Length>();
  expectTypeOf(airSpeedPeak({ diameter: '75 mm', flowPeak: '1 L/s' })).toEqualTypeOf<AirSpeedPeak>();
  expectTypeOf(airSpeedRms({ diameter: '75 mm', flowRms: '1 L/s' })).not.toEqualTypeOf<AirSpeedPeak>();
  const result = tuning({ vent, netVolume: '40 L' });
  // @ts-expect-error: it may be impossible
  void result.fb;
});
