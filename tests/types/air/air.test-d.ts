import { type Air, air, standardAtmosphere } from '@airspring/core/air';
import type { Density, Speed } from '@airspring/core/quantity';
import { expectTypeOf, test } from 'vitest';

test('conditions are text with a unit of the kind, results say what they are', () => {
  expectTypeOf(air({ temperature: '68 °F', humidity: '40 %', altitude: '2000 ft' })).toEqualTypeOf<Air>();
  expectTypeOf<Air['density']>().toEqualTypeOf<Density>();
  expectTypeOf<Air['speedOfSound']>().toEqualTypeOf<Speed>();
  // @ts-expect-error a temperature is no length
  air({ temperature: '20 m' });
  // @ts-expect-error a bare number has no unit
  air({ temperature: 20 });
  // @ts-expect-error nobody reads it
  air({ wind: '3 m/s' });
  // @ts-expect-error altitude in millimetres
  standardAtmosphere('100 mm');
});
