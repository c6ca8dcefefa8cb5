import { type Density, readFields, si } from '../quantity/index.js';
import { carbonDioxideFraction, type MoistAir, type MoistAirInput, moistAirShape } from './moist-air.js';
import { waterVapourFractionOf } from './water-vapour.js';

const gasConstant = 8.314472; // J/(mol·K); the value with which the equation was fitted, not today's exact one
const dryMolarMass = 28.96546e-3 + 12.011e-3 * (carbonDioxideFraction - 0.0004); // kg/mol
const waterMolarMass = 18.01528e-3; // kg/mol

/** Compressibility factor Z of moist air. */
function compressibility(T: number, p: number, xv: number): number {
  const t = T - 273.15;
  const first =
    1.58123e-6 + (-2.9331e-8 + 1.1043e-10 * t) * t + (5.707e-6 - 2.051e-8 * t + (1.9898e-4 - 2.376e-6 * t) * xv) * xv;
  return 1 - (p / T) * first + (p / T) ** 2 * (1.83e-11 - 0.765e-8 * xv * xv);
}

/** {@link moistAirDensity} of SI numbers, unchecked. */
export function moistAirDensityOf(state: MoistAir): number {
  const { temperature: T, pressure: p } = state;
  const xv = waterVapourFractionOf(state);
  const molarMass = dryMolarMass * (1 - xv * (1 - waterMolarMass / dryMolarMass));
  return (p * molarMass) / (compressibility(T, p, xv) * gasConstant * T);
}

/**
 * Density of moist air, equation CIPM-2007.
 *
 * $$ \rho = \frac{p M_a}{Z R T}\left[1 - x_v\left(1 - \frac{M_v}{M_a}\right)\right] $$
 *
 * $$ Z = 1 - \frac{p}{T}\left[a_0 + a_1 t + a_2 t^2 + (b_0 + b_1 t) x_v + (c_0 + c_1 t) x_v^2\right]
 *      + \frac{p^2}{T^2}\left(d + e x_v^2\right) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $p$ | `pressure` | Pa | static pressure |
 * | $T$, $t$ | `temperature` | K, °C | temperature |
 * | $x_v$ | `humidity` | 1 | mole fraction of water vapour, from the relative humidity |
 * | $M_a$, $M_v$ | | kg/mol | molar mass of dry air with 400 ppm of carbon dioxide, and of water |
 * | $Z$ | | 1 | compressibility factor |
 * | $R$ | | J/(mol·K) | gas constant |
 *
 * @validity published for 15 to 27 °C and 60 to 110 kPa, for weighing to 10⁻⁵; accurate to 10⁻⁴ from 0 to 40 °C
 * (printed examples at 10 and 40 °C).
 * @neglects gases other than those of clean air; a carbon dioxide content other than 400 ppm (10⁻⁴ of ρ per 250 ppm).
 * @returns kg/m³
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`, `empty`
 * @source picard2008 eq. 1 and appendix A
 * @example moistAirDensity({ temperature: '20 °C', pressure: '101325 Pa', humidity: '50 %' }) // 1.1993 kg/m³
 */
export const moistAirDensity = (input: MoistAirInput): Density =>
  si('density', moistAirDensityOf(readFields('moistAir', input, moistAirShape)));
