import { type Air, readAir, standardAir } from '../air/index.js';
import { solidAngleField } from '../duct/solid-angle-field.js';
import {
  anySign,
  type LengthInput,
  type Level,
  type LevelInput,
  optional,
  type PowerInput,
  positive,
  readFields,
  si,
} from '../quantity/index.js';
import { REFERENCE_PRESSURE } from '../response/index.js';
import { solidAngles } from './solid-angle.js';

const shape = { distance: positive('length'), solidAngle: optional(solidAngleField) };

export interface LevelAtDistanceInput {
  /** At 1 m in half space. */
  readonly level: LevelInput;
  readonly distance: LengthInput;
  /** The solid angle into which the box radiates, sr; default half space. */
  readonly solidAngle?: number | undefined;
}

/**
 * The level at a distance from a box, from its level at 1 m in half space: 6.02 dB less for each doubling of the distance.
 *
 * $$ L(r) = L_{1\,\mathrm m} - 20\lg\frac{r}{1\,\mathrm m} + 20\lg\frac{2\pi}{\Omega} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L_{1\,\mathrm m}$ | `level` | dB | level at 1 m in half space |
 * | $r$ | `distance` | m | from the box to the listener |
 * | $\Omega$ | `solidAngle` | sr | solid angle; $2\pi$ unless given |
 *
 * @validity out of doors, distances that are large against the box. In a room the level stops falling where the room returns more
 *   than the box sends
 * @neglects the room, wind, ground that absorbs, absorption in air
 * @returns dB re 20 µPa
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source beranek2012 pressure of a simple source
 * @example levelAtDistance({ level: '100 dB', distance: '8 m' }) // 81.9 dB
 */
export function levelAtDistance(input: LevelAtDistanceInput): Level {
  const { level, distance, solidAngle } = readFields('', input, { ...shape, level: anySign('level') });
  return si(
    'level',
    level - 20 * Math.log10((distance * (solidAngle ?? solidAngles.halfSpace)) / solidAngles.halfSpace),
  );
}

export interface LevelOfPowerInput {
  readonly power: PowerInput;
  readonly distance: LengthInput;
  /** The solid angle into which the power goes, sr; default half space. */
  readonly solidAngle?: number | undefined;
}

/**
 * The level at a distance of an acoustic power that is radiated evenly into a solid angle.
 *
 * $$ L = 10\lg\frac{W\rho c}{\Omega\,r^2\,p_0^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $W$ | `power` | W | acoustic power, not that of the amplifier |
 * | $r$ | `distance` | m | from the source |
 * | $\Omega$ | `solidAngle` | sr | solid angle; $2\pi$ unless given |
 * | $\rho c$ | `air` | Pa·s/m | characteristic impedance of the air |
 * | $p_0$ | | Pa | 20 µPa |
 *
 * @validity a free field
 * @neglects directivity, absorption in air
 * @returns dB re 20 µPa rms
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source beranek2012 power and intensity of a point source
 * @example levelOfPower({ power: '1 W', distance: '1 m' }) // 112.2 dB
 */
export function levelOfPower(input: LevelOfPowerInput, air: Air = standardAir): Level {
  const {
    power,
    distance,
    solidAngle = solidAngles.halfSpace,
  } = readFields('', input, {
    ...shape,
    power: positive('power'),
  });
  const { density, speedOfSound } = readAir(air);
  const square = (power * density * speedOfSound) / (solidAngle * distance ** 2);
  return si('level', 10 * Math.log10(square / REFERENCE_PRESSURE ** 2));
}
