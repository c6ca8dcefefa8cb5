import { type Air, readAir, standardAir } from '../air/index.js';
import { type Fault, refuse } from '../fault/index.js';
import type { FilterKernel } from '../filter/index.js';
import { given, type LengthInput, readFields, readInto } from '../quantity/index.js';
import { multiplyAt } from './multiply.js';
import { imageStrengths, imagesOf, readWalls, type Wall, type WallInput } from './walls.js';

/** A source near up to three walls at right angles, and a listener on the same side of them. */
export interface CornerInput {
  readonly walls: readonly WallInput[];
  /**
   * Where the listener is. For each wall, in their order: how far from that wall. For each direction that has no wall: how far from
   * the source, of either sign.
   */
  readonly listener: readonly [LengthInput, LengthInput, LengthInput];
}

const cornerShape = { walls: given<CornerInput['walls']>(), listener: given<CornerInput['listener']>() };

/** Distances under this are those of a listener inside the source, m. */
const NEAREST = 1e-3;

function listenerOf(listener: CornerInput['listener'], walls: readonly Wall[]): readonly number[] {
  const faults: Fault[] = [];
  if (!Array.isArray(listener) || listener.length !== 3) {
    const remedy = 'Give the distance from each wall, and then those from the source along the other directions.';
    refuse([{ code: 'empty', path: 'listener', got: listener, expected: 'a list of three lengths', remedy }]);
  }
  const read = listener.map((along, i) =>
    readInto(faults, 'length', along, `listener[${i}]`, i < walls.length ? 'not-negative' : 'any'),
  );
  refuse(faults);
  return read as readonly number[];
}

/**
 * The pressure at a listener from a small source near walls, by its images. It multiplies a response stated at 1 m in half space.
 *
 * $$ \frac{p}{p_{1\,\mathrm{m}}} = \frac{1\,\mathrm m}{2}\sum_i R_i\,\frac{e^{-jkr_i}}{r_i} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $p_{1\,\mathrm{m}}$ | | Pa | pressure at 1 m in half space without its delay, as `response` tells it |
 * | $r_i$ | `walls[].distance`, `listener` | m | from image $i$ to the listener; image 0 is the source |
 * | $R_i$ | `walls[].reflection` | 1 | product of the reflection factors of the walls of image $i$ |
 * | $k$ | | rad/m | wave number $2\pi f/c$ |
 *
 * Without walls this is the source in free air: 6.02 dB less than in half space at 1 m, and late by $r/c$.
 *
 * @validity sources that are small against the wavelength; flat walls, much wider than a wavelength
 * @neglects all other walls, the phase of a reflection, what the walls change in the motion of the cone, the shadow of box and people
 * @returns a {@link FilterKernel} that multiplies a response in place; exp(+jωt)
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`, `inconsistent`
 * @source allison1974 images of a small source
 * @example compileCorner({ walls: [{ distance: '0 m' }], listener: ['1.2 m', '3 m', '0 m'] })(grid, pressure)
 */
export function compileCorner(input: CornerInput, air: Air = standardAir): FilterKernel {
  const { walls: near, listener: place } = readFields('', input, cornerShape);
  const walls = readWalls(near);
  const listener = listenerOf(place, walls);
  const { speedOfSound } = readAir(air);
  const away = Float64Array.from(imagesOf(walls), (image) =>
    Math.hypot(
      ...listener.map((at, i) => {
        const source = walls[i]?.distance ?? 0;
        return at - (image.includes(i) ? -source : source);
      }),
    ),
  );
  if (away[0]! < NEAREST) {
    const remedy = 'Move the listener.';
    refuse([{ code: 'inconsistent', path: 'listener', got: place, expected: 'a place apart from the source', remedy }]);
  }
  const strengths = new Float64Array(away.length);
  const toWaveNumber = (2 * Math.PI) / speedOfSound;
  return (grid, response) => {
    for (let i = 0; i < grid.length; i++) {
      const f = grid[i]!;
      imageStrengths(walls, f, strengths);
      let re = 0;
      let im = 0;
      for (let image = 0; image < away.length; image++) {
        const r = away[image]!;
        const size = strengths[image]! / (2 * r);
        re += size * Math.cos(toWaveNumber * f * r);
        im -= size * Math.sin(toWaveNumber * f * r);
      }
      multiplyAt(response, i, re, im);
    }
  };
}
