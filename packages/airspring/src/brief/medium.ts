import { type Air, air, customAir } from '@airspring/core/air';
import { InputError } from '@airspring/core/fault';
import * as v from 'valibot';
import type { Faultless } from './faultless.js';
import { plainNumber, quantity } from './quantity-text.js';

const opt = v.exactOptional;
const needed = (text: string) =>
  `${text}; a medium of one's own is given by density, speedOfSound, viscosity, thermalConductivity, temperature and pressure`;

/** Numbers that a medium of one's own has instead of conditions. */
const numbers = {
  density: opt(v.pipe(quantity('density'), v.description(needed('density')))),
  speedOfSound: opt(v.pipe(quantity('speed'), v.description(needed('speed of sound')))),
  viscosity: opt(v.pipe(quantity('viscosity'), v.description(needed('dynamic viscosity')))),
  thermalConductivity: opt(v.pipe(quantity('thermalConductivity'), v.description(needed('thermal conductivity')))),
  heatCapacityRatio: opt(
    v.pipe(
      plainNumber(1, 2),
      v.description("ratio of specific heats of a medium of one's own; it must agree with density and speed of sound"),
    ),
  ),
  specificHeat: opt(
    v.pipe(
      quantity('specificHeat'),
      v.description("at constant pressure, of a medium of one's own; default that of an ideal gas"),
    ),
  ),
};

/** What a brief says of the air: its conditions, or a medium of one's own. */
export const mediumFields = {
  temperature: opt(quantity('temperature', { least: -60, greatest: 60, unit: '°C' }, 'any')),
  humidity: opt(quantity('humidity', { least: 0, greatest: 100, unit: '%' }, 'not-negative')),
  pressure: opt(quantity('pressure', { least: 20, greatest: 200, unit: 'kPa' })),
  altitude: opt(quantity('altitude', { least: -5000, greatest: 11_000, unit: 'm' }, 'any')),
  ...numbers,
};
type Medium = Faultless<v.InferOutput<v.StrictObjectSchema<typeof mediumFields, undefined>>>;

/**
 * The air of a brief: from its conditions, or checked as a medium of its own numbers.
 *
 * @throws InputError what `air` and `customAir` refuse; `conflict` for an altitude beside a medium of one's own
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
        expected: "the pressure instead, beside a density or another number of a medium of one's own",
        remedy: 'Remove it.',
      },
    ]);
  }
  return customAir(medium as Parameters<typeof customAir>[0]);
}
