import { type Air, air, customAir } from '@airspring/core/air';
import { InputError } from '@airspring/core/fault';
import * as v from 'valibot';
import type { Faultless } from './faultless.js';
import { plainNumber, quantity } from './quantity-text.js';

const opt = v.exactOptional;
/** What a medium other than air is given by, beside temperature and pressure. */
const OWN = ['density', 'speedOfSound', 'viscosity', 'thermalConductivity'] as const;
const needed = (field: (typeof OWN)[number], text: string) =>
  `${text} of a medium other than air; such a medium also needs ${OWN.filter((name) => name !== field).join(', ')}, temperature and pressure`;

/** The numbers of a medium other than air. */
const numbers = {
  density: opt(v.pipe(quantity('density'), v.description(needed('density', 'density')))),
  speedOfSound: opt(v.pipe(quantity('speed'), v.description(needed('speedOfSound', 'speed of sound')))),
  viscosity: opt(v.pipe(quantity('viscosity'), v.description(needed('viscosity', 'dynamic viscosity')))),
  thermalConductivity: opt(
    v.pipe(quantity('thermalConductivity'), v.description(needed('thermalConductivity', 'thermal conductivity'))),
  ),
  heatCapacityRatio: opt(
    v.pipe(
      plainNumber(1, 2),
      v.description(
        'ratio of the specific heats of a medium other than air; it must agree with its density and speed of sound',
      ),
    ),
  ),
  specificHeat: opt(
    v.pipe(
      quantity('specificHeat'),
      v.description('specific heat at constant pressure of a medium other than air; default that of an ideal gas'),
    ),
  ),
};

/** What a brief says about the air: its conditions, or the numbers of another medium. */
export const mediumFields = {
  temperature: opt(
    v.pipe(
      quantity('temperature', { least: -60, greatest: 60, unit: '°C' }, 'any'),
      v.description('of the air; default 20 °C'),
    ),
  ),
  humidity: opt(
    v.pipe(
      quantity('humidity', { least: 0, greatest: 100, unit: '%' }, 'not-negative'),
      v.description('relative humidity of the air; default 50 %'),
    ),
  ),
  pressure: opt(
    v.pipe(
      quantity('pressure', { least: 20, greatest: 200, unit: 'kPa' }),
      v.description('of the air; give it or altitude; default 101.325 kPa'),
    ),
  ),
  altitude: opt(
    v.pipe(
      quantity('altitude', { least: -5000, greatest: 11_000, unit: 'm' }, 'any'),
      v.description('height above the sea, from which the pressure follows; default 0 m'),
    ),
  ),
  ...numbers,
};
type Medium = Faultless<v.InferOutput<v.StrictObjectSchema<typeof mediumFields, undefined>>>;

/**
 * The air of a brief, worked out from its conditions; or another medium, whose numbers are checked.
 *
 * @throws InputError what `air` and `customAir` refuse; `conflict` for an altitude beside the numbers of another medium
 */
export function mediumOf(medium: Medium): Air {
  const { altitude, temperature, humidity, pressure } = medium;
  if (!Object.keys(numbers).some((name) => Object.hasOwn(medium, name))) {
    return air({ temperature, humidity, pressure, altitude });
  }
  if (altitude !== undefined) {
    throw new InputError([
      {
        code: 'conflict',
        path: 'air.altitude',
        got: altitude,
        expected: 'air.pressure instead, since the other fields describe a medium other than air',
        remedy: 'Remove it.',
      },
    ]);
  }
  return customAir(medium as Parameters<typeof customAir>[0]);
}
