import { readFields, type Speed, si, type TemperatureInput } from '../quantity/index.js';
import { airTemperature } from './moist-air.js';

/** What the speed of sound in dry air depends on. */
export interface DryAirInput {
  /** −60 to 60 °C. */
  readonly temperature: TemperatureInput;
}

/**
 * Speed of sound from the temperature alone, as stated in the standard for atmospheric absorption. In moist air it differs
 * from {@link speedOfSound} by up to 0.6 %.
 *
 * $$ c = 343.2\,\mathrm{m/s}\,\sqrt{T / 293.15\,\mathrm{K}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $T$ | `temperature` | K | temperature |
 *
 * @validity −20 to 50 °C.
 * @neglects humidity, pressure, dispersion.
 * @returns m/s
 * @throws InputError `empty`, `unit`, `not-finite`, `out-of-range`, `unknown-field`
 * @source iso9613_1 formula A.5
 * @example dryAirSpeedOfSound({ temperature: '0 °C' }) // 331.29 m/s
 */
export const dryAirSpeedOfSound = (input: DryAirInput): Speed =>
  si('speed', 343.2 * Math.sqrt(readFields('dryAir', input, { temperature: airTemperature }).temperature / 293.15));
