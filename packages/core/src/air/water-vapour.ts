import { readFields } from '../quantity/index.js';
import { type MoistAir, type MoistAirInput, moistAirShape } from './moist-air.js';

/** A, B, C, D in the logarithm of the saturation vapour pressure, A T² + B T + C + D/T, in K and Pa. */
type SaturationConstants = readonly [number, number, number, number];

const saturation2007: SaturationConstants = [1.2378847e-5, -1.9121316e-2, 33.93711047, -6343.1645];

/** The older constants, which the publication of the speed-of-sound polynomial uses. */
export const saturation1981: SaturationConstants = [1.2811805e-5, -1.9509874e-2, 34.04926034, -6353.6311];

/** {@link waterVapourFraction} of SI numbers, unchecked. */
export function waterVapourFractionOf(state: MoistAir, [A, B, C, D] = saturation2007): number {
  const { temperature: T, pressure: p, humidity: h } = state;
  const t = T - 273.15;
  const saturation = Math.exp((A * T + B) * T + C + D / T);
  const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
  // At 60 °C and 20 kPa saturated air is nothing but vapour.
  return Math.min(1, (h * enhancement * saturation) / p);
}

/**
 * Mole fraction of water vapour in moist air.
 *
 * $$ x_v = h\, f(p, t)\, \frac{p_{sv}(T)}{p}, \quad p_{sv} = 1\,\mathrm{Pa} \cdot e^{A T^2 + B T + C + D/T}, \quad
 * f = \alpha + \beta p + \gamma t^2 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $h$ | `humidity` | 1 | relative humidity, with respect to water even below 0 °C |
 * | $T$, $t$ | `temperature` | K, °C | temperature |
 * | $p$ | `pressure` | Pa | static pressure |
 * | $p_{sv}$ | | Pa | vapour pressure at saturation |
 * | $f$ | | 1 | enhancement factor, the ratio of the real gas to the ideal gas |
 *
 * @validity published for 15 to 27 °C and 60 to 110 kPa; from 0 to 40 °C within 0.1 % of an independent equation
 * (see the checks); below 0 °C it holds over supercooled water.
 * @neglects droplets and ice.
 * @returns 1
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`, `empty`
 * @source picard2008 §2 and appendix A1
 * @example waterVapourFraction({ temperature: '20 °C', pressure: '101325 Pa', humidity: '50 %' }) // 0.01159
 */
export const waterVapourFraction = (input: MoistAirInput): number =>
  waterVapourFractionOf(readFields('moistAir', input, moistAirShape));
