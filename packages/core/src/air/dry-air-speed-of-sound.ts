import { readFields, type Speed, si, type TemperatureInput } from '../quantity/index.js';
import { airTemperature } from './moist-air.js';

/** The state of dry air, as far as its speed of sound depends on it. */
export interface DryAirInput {
  /** −60 to 60 °C. */
  readonly temperature: TemperatureInput;
}

/**
 * Speed of sound from temperature alone, as the standard for atmospheric absorption states it: the second road to
 * {@link speedOfSound}, from which it differs by up to 0.6 % in moist air.
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
