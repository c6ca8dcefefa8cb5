import { type Air, readAir, standardAir } from '../air/index.js';
import { solidAngleField } from '../duct/solid-angle-field.js';
import type { FilterKernel } from '../filter/index.js';
import {
  type Frequency,
  type FrequencyInput,
  type LengthInput,
  optional,
  positive,
  readFields,
  si,
  type VolumeInput,
} from '../quantity/index.js';
import { multiplyAt } from './multiply.js';
import { solidAngles } from './solid-angle.js';

/** A closed room or cabin. */
export interface PressureZoneInput {
  readonly volume: VolumeInput;
  /** Below this frequency the air leaks out before it is compressed; left out for a room without leaks. */
  readonly leakCorner?: FrequencyInput | undefined;
}

/**
 * The even pressure of a closed room far below its first mode, where the whole room is one spring of air. It multiplies a response
 * stated at 1 m in half space.
 *
 * $$ \frac{p}{p_{1\,\mathrm m}} = \frac{2\pi c^2\cdot 1\,\mathrm m}{V\,j\omega\,(j\omega + \omega_l)},\qquad
 *    p = \frac{\rho c^2\,U}{V\,(j\omega + \omega_l)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `volume` | m³ | air of the room |
 * | $\omega_l/2\pi$ | `leakCorner` | Hz | corner of the leak: $1/(2\pi R C)$ of its flow resistance and the spring $C = V/\rho c^2$ |
 * | $U$ | | m³/s | flow out of the box |
 * | $c$ | `air` | m/s | speed of sound |
 *
 * For a given travel of the cone the pressure is the same at every frequency. Against the free field it rises by 12 dB per octave
 * towards low frequencies, and by 6 dB below the corner of the leak.
 *
 * @validity rooms whose longest edge is below a sixth of the wavelength; adiabatic
 * @neglects all modes, walls and windows that give way, the mass of the air in an opening, the sound of the box itself close by
 * @returns a {@link FilterKernel} that multiplies a response in place; exp(+jωt)
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source beranek2012 acoustic compliance of a cavity, C = V/(ρc²)
 * @example compilePressureZone({ volume: '3 m³', leakCorner: '4 Hz' })(grid, pressure)
 */
export function compilePressureZone(input: PressureZoneInput, air: Air = standardAir): FilterKernel {
  const { volume, leakCorner = 0 } = readFields('', input, {
    volume: positive('volume'),
    leakCorner: optional(positive('frequency')),
  });
  const strength = (2 * Math.PI * readAir(air).speedOfSound ** 2) / volume;
  const leak = 2 * Math.PI * leakCorner;
  return (grid, response) => {
    for (let i = 0; i < grid.length; i++) {
      const w = 2 * Math.PI * grid[i]!;
      // 1/(jω (jω + ωl)) = −(ω + jωl) / (ω (ω² + ωl²))
      const size = -strength / (w * (w * w + leak * leak));
      multiplyAt(response, i, size * w, size * leak);
    }
  };
}

/** A room, and how far the listener sits in it. */
export interface RoomGainInput extends PressureZoneInput {
  readonly distance: LengthInput;
  /** The solid angle of the free field, sr; default half space. */
  readonly solidAngle?: number | undefined;
}

const roomShape = {
  volume: positive('volume'),
  distance: positive('length'),
  solidAngle: optional(solidAngleField),
};

/**
 * The frequency at which the even pressure of a closed room equals the pressure in the free field at a distance, for the same flow.
 *
 * $$ f_x = \frac{c}{2\pi}\sqrt{\frac{\Omega\,r}{V}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `volume` | m³ | air of the room |
 * | $r$ | `distance` | m | from the box to the listener |
 * | $\Omega$ | `solidAngle` | sr | solid angle of the free field; $2\pi$ unless given |
 * | $c$ | `air` | m/s | speed of sound |
 *
 * @validity a scale: between this frequency and the first mode neither the even pressure nor the free field holds
 * @neglects modes, leaks
 * @returns Hz
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source beranek2012 compliance of a cavity, and simple source, equated
 * @example pressureZoneCorner({ volume: '30 m³', distance: '1 m' }) // 25.1 Hz
 */
export function pressureZoneCorner(input: Omit<RoomGainInput, 'leakCorner'>, air: Air = standardAir): Frequency {
  const { volume, distance, solidAngle = solidAngles.halfSpace } = readFields('', input, roomShape);
  const { speedOfSound } = readAir(air);
  return si('frequency', (speedOfSound / (2 * Math.PI)) * Math.sqrt((solidAngle * distance) / volume));
}
