import { readFields, type Speed, si } from '../quantity/index.js';
import { carbonDioxideFraction, type MoistAir, type MoistAirInput, moistAirShape } from './moist-air.js';
import { saturation1981, waterVapourFractionOf } from './water-vapour.js';

/** {@link speedOfSound} of SI numbers, unchecked. */
export function speedOfSoundOf(state: MoistAir): number {
  const { temperature: T, pressure: p } = state;
  const t = T - 273.15;
  const xw = waterVapourFractionOf(state, saturation1981);
  const xc = carbonDioxideFraction;
  return (
    331.5024 +
    (0.603055 - 0.000528 * t) * t +
    (51.471935 + (0.1495874 - 0.000782 * t) * t) * xw +
    (-1.82e-7 + (3.73e-8 - 2.93e-10 * t) * t) * p +
    (-85.20931 + (-0.228525 + 5.91e-5 * t) * t) * xc -
    2.835149 * xw * xw -
    2.15e-13 * p * p +
    29.179762 * xc * xc +
    0.000486 * xw * p * xc
  );
}

/**
 * Speed of sound in moist air at low frequencies: the polynomial of Cramer.
 *
 * $$ c = a_0 + a_1 t + a_2 t^2 + (a_3 + a_4 t + a_5 t^2) x_w + (a_6 + a_7 t + a_8 t^2) p
 *      + (a_9 + a_{10} t + a_{11} t^2) x_c + a_{12} x_w^2 + a_{13} p^2 + a_{14} x_c^2 + a_{15} x_w p x_c $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $t$ | `temperature` | °C | temperature |
 * | $p$ | `pressure` | Pa | static pressure |
 * | $x_w$ | `humidity` | 1 | mole fraction of water vapour, from the relative humidity |
 * | $x_c$ | | 1 | mole fraction of carbon dioxide, 400 ppm |
 *
 * @validity 0 to 30 °C, 75 to 102 kPa.
 * @neglects dispersion by relaxation of oxygen and nitrogen (at most 10⁻⁴ between low and high frequencies, from memory).
 * The vapour fraction uses the older vapour-pressure constants of the paper, which changes c by at most 3·10⁻⁶.
 * @returns m/s
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`, `empty`
 * @source cramer1993 eq. 15 and table III
 * @example speedOfSound({ temperature: '20 °C', pressure: '101325 Pa', humidity: '50 %' }) // 343.99 m/s
 */
export const speedOfSound = (input: MoistAirInput): Speed =>
  si('speed', speedOfSoundOf(readFields('moistAir', input, moistAirShape)));
