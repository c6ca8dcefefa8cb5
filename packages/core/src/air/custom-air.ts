import { type Fault, refuse, type Warning } from '../fault/index.js';
import {
  type DensityInput,
  given,
  type HumidityInput,
  notNegative,
  optional,
  type PressureInput,
  positive,
  type RatioInput,
  readFields,
  type SpecificHeatInput,
  type SpeedInput,
  si,
  type TemperatureInput,
  type ThermalConductivityInput,
  type ViscosityInput,
} from '../quantity/index.js';
import type { Air } from './air.js';

/** A medium given by its own numbers. Those of γ, cp and Pr that are left out follow from the others. */
export interface CustomAirInput {
  readonly temperature: TemperatureInput;
  readonly pressure: PressureInput;
  readonly density: DensityInput;
  readonly speedOfSound: SpeedInput;
  readonly viscosity: ViscosityInput;
  readonly thermalConductivity: ThermalConductivityInput;
  /** Default 0. It is kept in the record, but no formula uses it. */
  readonly humidity?: HumidityInput | undefined;
  readonly heatCapacityRatio?: RatioInput | undefined;
  readonly specificHeat?: SpecificHeatInput | undefined;
  readonly prandtlNumber?: RatioInput | undefined;
  /** The warnings of a medium that is passed in again. */
  readonly warnings?: readonly Warning[] | undefined;
}

const customAirShape = {
  temperature: positive('temperature'),
  pressure: positive('pressure'),
  density: positive('density'),
  speedOfSound: positive('speed'),
  viscosity: positive('viscosity'),
  thermalConductivity: positive('thermalConductivity'),
  humidity: optional(notNegative('humidity')),
  heatCapacityRatio: optional(positive('ratio')),
  specificHeat: optional(positive('specificHeat')),
  prandtlNumber: optional(positive('ratio')),
  warnings: optional(given<readonly Warning[]>()),
};

/** Greatest relative difference between two numbers that should be equal; real gases near 1 bar agree within 1.2 %. */
const agreement = 0.02;

/**
 * A medium given by its own numbers, for example another gas, a published table or a measured density.
 *
 * $$ \gamma = \frac{\rho c^2}{p}, \quad c_p = \frac{\gamma}{\gamma - 1}\,\frac{p}{\rho T}, \quad \mathrm{Pr} = \frac{\mu c_p}{\kappa} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $T$ | `temperature` | K | temperature |
 * | $p$ | `pressure` | Pa | static pressure |
 * | $\rho$ | `density` | kg/m³ | density |
 * | $c$ | `speedOfSound` | m/s | speed of sound |
 * | $\mu$ | `viscosity` | Pa·s | dynamic viscosity |
 * | $\kappa$ | `thermalConductivity` | W/(m·K) | thermal conductivity |
 * | $\gamma$ | `heatCapacityRatio` | 1 | ratio of specific heats, always computed from ρ, c and p |
 * | $c_p$ | `specificHeat` | J/(kg·K) | specific heat at constant pressure, as given or as for an ideal gas |
 * | $\mathrm{Pr}$ | `prandtlNumber` | 1 | Prandtl number, always computed from μ, cp and κ |
 *
 * Given values of the last three must agree with the formulas within 2 %.
 *
 * @validity nearly ideal gases with γ above 1 and at most 5/3 (within the 2 %), such as helium, nitrogen, argon, carbon dioxide
 * @neglects real-gas effects in γ (up to 0.6 %) and in cp (up to 1.2 %) in those gases at 20 °C and 101325 Pa
 * @returns the record `Air`
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`; `inconsistent` for
 *   γ, cp or Pr that disagree
 * @source cramer1993 $c^2 = \gamma p / \rho$; keefe1984 constants of air with γ and Pr among them
 * @example customAir({ ...air(), density: '1.18 kg/m³' }).heatCapacityRatio // 1.378
 */
export function customAir(input: CustomAirInput): Air {
  const read = readFields('air', input, customAirShape);
  const { temperature, pressure, density, speedOfSound, viscosity, thermalConductivity } = read;
  const faults: Fault[] = [];
  const heatCapacityRatio = (density * speedOfSound ** 2) / pressure;
  if (!(heatCapacityRatio > 1 && heatCapacityRatio <= (1 + agreement) * (5 / 3))) {
    const expected = `a density ρ, a speed of sound c and a pressure p for which ρc²/p lies between 1 and 5/3; it is ${heatCapacityRatio}`;
    const remedy = 'Check that the three belong to the same gas in the same state.';
    faults.push({ code: 'inconsistent', path: 'air.speedOfSound', got: input.speedOfSound, expected, remedy });
  }
  refuse(faults);
  const ideal = ((heatCapacityRatio / (heatCapacityRatio - 1)) * pressure) / (density * temperature);
  const specificHeat = read.specificHeat ?? si('specificHeat', ideal);
  const prandtlNumber = (viscosity * specificHeat) / thermalConductivity;
  const agree = (field: 'heatCapacityRatio' | 'specificHeat' | 'prandtlNumber', value: number, formula: string) => {
    const got = read[field] ?? value;
    if (Math.abs(got / value - 1) <= agreement) return;
    const expected = `${value} within 2 %, from ${formula}`;
    const remedy = 'Leave it out, or correct the other values.';
    faults.push({ code: 'inconsistent', path: `air.${field}`, got: input[field], expected, remedy });
  };
  agree('heatCapacityRatio', heatCapacityRatio, 'ρc²/p');
  agree('specificHeat', ideal, 'γ/(γ − 1)·p/(ρT)');
  agree('prandtlNumber', prandtlNumber, 'μ·cp/κ');
  refuse(faults);
  return {
    temperature,
    pressure,
    humidity: read.humidity ?? si('humidity', 0),
    density,
    speedOfSound,
    viscosity,
    thermalConductivity,
    heatCapacityRatio,
    specificHeat,
    prandtlNumber,
    warnings: read.warnings ?? [],
  };
}
