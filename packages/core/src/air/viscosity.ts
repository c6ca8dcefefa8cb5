import { readFields, si, type TemperatureInput, type Viscosity } from '../quantity/index.js';
import { airTemperature } from './moist-air.js';

/** {@link viscosity} of SI numbers, unchecked. */
export const viscosityOf = (T: number): number => (1.458e-6 * T * Math.sqrt(T)) / (T + 110.4);

/**
 * Dynamic viscosity of air by Sutherland's law, with the constants of the standard atmosphere.
 *
 * $$ \mu = \frac{\beta\, T^{3/2}}{T + S} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $T$ | `temperature` | K | temperature |
 * | $\beta$ | | kg/(s·m·√K) | 1.458 · 10⁻⁶ |
 * | $S$ | | K | 110.4 |
 *
 * @validity −60 to 60 °C, within 0.6 % of an independent equation for dry air.
 * @neglects humidity (saturated air at 40 °C is 2 % less viscous, see the checks) and pressure (10⁻³ up to 1 MPa).
 * @returns Pa·s
 * @throws InputError `unit`, `not-finite`, `out-of-range`
 * @source ussa1976 viscosity equation
 * @example viscosity('20 °C') // 18.13e-6 Pa·s
 */
export function viscosity(temperature: TemperatureInput): Viscosity {
  return si('viscosity', viscosityOf(readFields('', { temperature }, { temperature: airTemperature }).temperature));
}
