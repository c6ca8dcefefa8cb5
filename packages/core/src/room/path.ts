import { type Air, readAir, standardAir } from '../air/index.js';
import { solidAngleField } from '../duct/solid-angle-field.js';
import { type Fault, refuse } from '../fault/index.js';
import type { FilterKernel } from '../filter/index.js';
import {
  anySign,
  type Fields,
  type LengthInput,
  type LevelInput,
  notNegative,
  oneOf,
  optional,
  positive,
  readFieldsInto,
  type TimeInput,
} from '../quantity/index.js';
import { multiplyAt } from './multiply.js';
import { solidAngles } from './solid-angle.js';

/** How the sound of a box comes to the listener, and what is done to its signal. */
export interface PathInput {
  readonly distance: LengthInput;
  /** A delay of the signal, apart from the way through the air; default 0. */
  readonly delay?: TimeInput | undefined;
  /** Which way round the box is wired; default `'normal'`. */
  readonly polarity?: 'normal' | 'inverted' | undefined;
  /** A change of the level, of either sign; default 0 dB. */
  readonly level?: LevelInput | undefined;
  /** The solid angle into which it radiates, sr; default half space. */
  readonly solidAngle?: number | undefined;
}

export const pathShape = {
  distance: positive('length'),
  delay: optional(notNegative('time')),
  polarity: optional(oneOf('normal', 'inverted')),
  level: optional(anySign('level')),
  solidAngle: optional(solidAngleField),
};

/** A kernel from a path that was read. */
export function pathKernel(path: Fields<typeof pathShape>, { speedOfSound }: Air): FilterKernel {
  const { distance, delay = 0, polarity = 'normal', level = 0, solidAngle = solidAngles.halfSpace } = path;
  const sign = polarity === 'normal' ? 1 : -1;
  const size = ((sign * solidAngles.halfSpace) / (solidAngle * distance)) * 10 ** (level / 20);
  const toAngle = 2 * Math.PI * (delay + distance / speedOfSound);
  return (grid, response) => {
    for (let i = 0; i < grid.length; i++) {
      const angle = toAngle * grid[i]!;
      multiplyAt(response, i, size * Math.cos(angle), -size * Math.sin(angle));
    }
  };
}

/**
 * The way from a small source to a listener, with delay, polarity and level of its signal. It multiplies a response stated at 1 m
 * in half space.
 *
 * $$ \frac{p}{p_{1\,\mathrm m}} = \pm\,10^{\Delta L/20}\,\frac{2\pi}{\Omega}\,\frac{1\,\mathrm m}{r}\,e^{-j\omega(\tau + r/c)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $r$ | `distance` | m | from the source to the listener |
 * | $\Omega$ | `solidAngle` | sr | solid angle; $2\pi$ unless given |
 * | $\tau$ | `delay` | s | delay of the signal; 0 unless given |
 * | $\Delta L$ | `level` | dB | change of level; 0 unless given |
 * | $\pm$ | `polarity` | | minus for `'inverted'` |
 * | $c$ | `air` | m/s | speed of sound |
 *
 * @validity distances that are large against the source; a free field
 * @neglects all reflections that the solid angle does not count, directivity, absorption in air
 * @returns a {@link FilterKernel} that multiplies a response in place; exp(+jωt)
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source beranek2012 pressure of a simple source
 * @example compilePath({ distance: '3 m', delay: '2 ms', polarity: 'inverted' })(grid, pressure)
 */
export function compilePath(path: PathInput, air: Air = standardAir): FilterKernel {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, '', path, pathShape);
  refuse(faults);
  return pathKernel(read!, readAir(air));
}
