import { type Fault, refuse, type Warning } from '../fault/index.js';
import {
  type AltitudeInput,
  type Density,
  type Humidity,
  type HumidityInput,
  notNegative,
  optional,
  type Pressure,
  type PressureInput,
  readFieldsInto,
  type SpecificHeat,
  type Speed,
  si,
  type Temperature,
  type TemperatureInput,
  type ThermalConductivity,
  type Viscosity,
} from '../quantity/index.js';
import { moistAirDensityOf } from './density.js';
import { airAltitude, airPressure, airTemperature } from './moist-air.js';
import { speedOfSoundOf } from './speed-of-sound.js';
import { standardAtmosphere } from './standard-atmosphere.js';
import { thermalConductivityOf } from './thermal-conductivity.js';
import { viscosityOf } from './viscosity.js';

/** The properties of a medium, as a plain record of SI numbers that can be stored as JSON. */
export interface Air {
  readonly temperature: Temperature;
  readonly pressure: Pressure;
  readonly humidity: Humidity;
  /** ρ, kg/m³. */
  readonly density: Density;
  /** c, m/s. */
  readonly speedOfSound: Speed;
  /** μ, dynamic, Pa·s. */
  readonly viscosity: Viscosity;
  /** κ, W/(m·K). */
  readonly thermalConductivity: ThermalConductivity;
  /** γ = ρc²/p: the effective ratio of specific heats, so that ρc² = γp holds exactly. */
  readonly heatCapacityRatio: number;
  /** cp, specific heat at constant pressure, J/(kg·K). */
  readonly specificHeat: SpecificHeat;
  /** Pr = μ cp/κ. */
  readonly prandtlNumber: number;
  readonly warnings: readonly Warning[];
}

/** The conditions of the air in the room. The pressure is the actual one, not that reduced to sea level. */
export interface AirConditions {
  /** Default 20 °C; −60 to 60 °C. */
  readonly temperature?: TemperatureInput | undefined;
  /** Default 50 %. */
  readonly humidity?: HumidityInput | undefined;
  /** Default 101325 Pa; 20 to 200 kPa. */
  readonly pressure?: PressureInput | undefined;
  /** Replaces the pressure by the mean pressure at this altitude; −5000 to 11000 m. */
  readonly altitude?: AltitudeInput | undefined;
}

/** The default conditions. */
export const standardConditions = Object.freeze({
  temperature: si('temperature', 293.15),
  humidity: si('humidity', 0.5),
  pressure: si('pressure', 101325),
});

const conditionsShape = {
  temperature: optional(airTemperature),
  humidity: optional(notNegative('humidity')),
  pressure: optional(airPressure),
  altitude: optional(airAltitude),
};

/** Warns outside the range of the speed-of-sound formula. Only the range of the density formula, meant for weighing, is narrower. */
function warningsFor(temperature: number, pressure: number): Warning[] {
  const warnings: Warning[] = [];
  const warn = (path: string, got: number, expected: string) =>
    warnings.push({ code: 'outside-validity', path, got, expected });
  // The bounds have a little slack, because 30 °C is 303.15 K only up to rounding.
  if (temperature < 273.15 - 1e-9 || temperature > 303.15 + 1e-9) warn('temperature', temperature, '0 to 30 °C');
  if (pressure < 75e3 || pressure > 102e3) warn('pressure', pressure, '75 to 102 kPa');
  return warnings;
}

/**
 * The properties of air from its conditions: density, speed of sound, viscosity, thermal conductivity and what follows.
 *
 * $$ \gamma = \frac{\rho c^2}{p}, \quad c_p = \frac{\gamma}{\gamma - 1}\,\frac{p}{\rho T}, \quad \mathrm{Pr} = \frac{\mu c_p}{\kappa} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $T$ | `temperature` | K | temperature |
 * | $p$ | `pressure` | Pa | static pressure, given or from the `altitude` |
 * | $\rho$ | `density` | kg/m³ | by `moistAirDensity` |
 * | $c$ | `speedOfSound` | m/s | by `speedOfSound` |
 * | $\mu$ | `viscosity` | Pa·s | by `viscosity` |
 * | $\kappa$ | `thermalConductivity` | W/(m·K) | by `thermalConductivity` |
 * | $\gamma$ | `heatCapacityRatio` | 1 | effective ratio of specific heats |
 * | $c_p$ | `specificHeat` | J/(kg·K) | specific heat at constant pressure, as for an ideal gas |
 * | $\mathrm{Pr}$ | `prandtlNumber` | 1 | Prandtl number |
 *
 * @validity 0 to 30 °C, 75 to 102 kPa; outside this range `warnings` contains `outside-validity`.
 * @neglects real-gas effects in γ and cp (at most 1 % of cp, see the checks); whatever the individual formulas neglect.
 * @returns the record {@link Air}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `conflict` (pressure with altitude), `unknown-field`
 * @source cramer1993 eq. 15 (through $c^2 = \gamma p / \rho$), picard2008 eq. 1, ussa1976
 * @example air({ temperature: '25 °C', altitude: '600 m' }).density // 1.0954 kg/m³
 */
export function air(conditions: AirConditions = {}): Air {
  const faults: Fault[] = [];
  const given = readFieldsInto(faults, 'air', conditions, conditionsShape);
  if (typeof conditions === 'object' && conditions?.pressure !== undefined && conditions.altitude !== undefined) {
    const expected = 'a pressure or an altitude, not both';
    faults.push({
      code: 'conflict',
      path: 'air.altitude',
      got: conditions.altitude,
      expected,
      remedy: 'Leave one of them out.',
    });
  }
  refuse(faults);
  const temperature = given?.temperature ?? standardConditions.temperature;
  const humidity = given?.humidity ?? standardConditions.humidity;
  const altitude = given?.altitude;
  const pressure =
    given?.pressure ?? (altitude === undefined ? standardConditions.pressure : standardAtmosphere(altitude).pressure);

  const state = { temperature, pressure, humidity };
  const density = moistAirDensityOf(state);
  const speed = speedOfSoundOf(state);
  const viscosity = viscosityOf(temperature);
  const conductivity = thermalConductivityOf(temperature);
  const heatCapacityRatio = (density * speed * speed) / pressure;
  const specificHeat = ((heatCapacityRatio / (heatCapacityRatio - 1)) * pressure) / (density * temperature);
  return {
    ...state,
    density: si('density', density),
    speedOfSound: si('speed', speed),
    viscosity: si('viscosity', viscosity),
    thermalConductivity: si('thermalConductivity', conductivity),
    heatCapacityRatio,
    specificHeat: si('specificHeat', specificHeat),
    prandtlNumber: (viscosity * specificHeat) / conductivity,
    warnings: warningsFor(temperature, pressure),
  };
}

/** The default air, at 20 °C, 50 % and 101325 Pa ({@link standardConditions}). It is frozen because every calculation shares it. */
export const standardAir: Air = Object.freeze({ ...air(), warnings: Object.freeze([]) });
