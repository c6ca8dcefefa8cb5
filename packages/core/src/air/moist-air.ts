import type { Fault } from '../fault/index.js';
import {
  type Field,
  type Humidity,
  type HumidityInput,
  type Kind,
  notNegative,
  type Pressure,
  type PressureInput,
  type Quantity,
  readInto,
  type Temperature,
  type TemperatureInput,
} from '../quantity/index.js';

/** The state of moist air. */
export interface MoistAirInput {
  /** −60 to 60 °C. */
  readonly temperature: TemperatureInput;
  /** Static pressure, not reduced to sea level: 20 to 200 kPa. */
  readonly pressure: PressureInput;
  /** Relative humidity over water, 0 to 100 %. */
  readonly humidity: HumidityInput;
}

/** The state of moist air in SI numbers, after it was read. */
export interface MoistAir {
  readonly temperature: Temperature;
  readonly pressure: Pressure;
  readonly humidity: Humidity;
}

/** Mole fraction of carbon dioxide, used in all formulas of this folder; the reference value of the density formula. */
export const carbonDioxideFraction = 0.0004;

/** A quantity between two bounds, outside which the formulas of this folder do not apply. */
const between = <K extends Kind>(kind: K, least: number, greatest: number, expected: string): Field<Quantity<K>> => ({
  optional: false,
  read: (faults: Fault[], value, path) => {
    const got = readInto(faults, kind, value, path, 'any');
    // The bounds have a little slack, because −60 °C is 213.15 K only up to rounding.
    const slack = greatest * 1e-9;
    if (got === undefined || (got >= least - slack && got <= greatest + slack)) return got;
    faults.push({ code: 'out-of-range', path, got: value, expected, remedy: 'Check the unit.' });
    return undefined;
  },
});

/** Air temperature, −60 to 60 °C, which covers outdoor air in all climates and warm enclosures. */
export const airTemperature = between('temperature', 213.15, 333.15, 'an air temperature of -60 to 60 °C');

/** Static pressure, 20 to 200 kPa. At lower pressures saturated air at 60 °C would be nothing but vapour. */
export const airPressure = between('pressure', 2e4, 2e5, 'an air pressure of 20 to 200 kPa');

/** Geometric altitude above sea level, up to the top of the lowest layer of the atmosphere. */
export const airAltitude = between('altitude', -5000, 11000, 'an altitude of -5000 to 11000 m');

/** How a state of moist air is read. */
export const moistAirShape = { temperature: airTemperature, pressure: airPressure, humidity: notNegative('humidity') };
