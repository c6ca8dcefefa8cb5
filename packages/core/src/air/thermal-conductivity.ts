import { readFields, si, type TemperatureInput, type ThermalConductivity } from '../quantity/index.js';
import { airTemperature } from './moist-air.js';

/** {@link thermalConductivity} of SI numbers, unchecked. */
export const thermalConductivityOf = (T: number): number =>
  (2.64638e-3 * T * Math.sqrt(T)) / (T + 245.4 * 10 ** (-12 / T));

/**
 * Thermal conductivity of air by the equation of the standard atmosphere.
 *
 * $$ \kappa = \frac{2.64638 \cdot 10^{-3}\, T^{3/2}}{T + 245.4 \cdot 10^{-12/T}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $T$ | `temperature` | K | temperature |
 *
 * @validity −60 to 60 °C, within 1 % of an independent equation for dry air above 0 °C, 2 % at −60 °C.
 * @neglects humidity and pressure.
 * @returns W/(m·K)
 * @throws InputError `unit`, `not-finite`, `out-of-range`
 * @source ussa1976 thermal-conductivity equation
 * @example thermalConductivity('20 °C') // 0.02572 W/(m·K)
 */
export function thermalConductivity(temperature: TemperatureInput): ThermalConductivity {
  const { temperature: T } = readFields('', { temperature }, { temperature: airTemperature });
  return si('thermalConductivity', thermalConductivityOf(T));
}
