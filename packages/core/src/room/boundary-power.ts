import { type Air, readAir, standardAir } from '../air/index.js';
import { frequencyGrid } from '../quantity/index.js';
import { imageStrengths, imagesOf, readWalls, type WallInput } from './walls.js';

/** The level of no power at all, which has to be a number: −3000 dB. */
const LEAST = 1e-300;

/**
 * The power that a small source of a given flow radiates near one, two or three walls at right angles, against that in free air. Each
 * wall works as an image of the source. Their pressure at the source changes what it radiates.
 *
 * $$ \Delta L_W = 10\lg\sum_i R_i\,\frac{\sin k s_i}{k s_i},\qquad s_i = 2\sqrt{\textstyle\sum_{w\in i} d_w^2},\quad
 *    R_i = \prod_{w \in i} R_w $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $d_w$ | `walls[].distance` | m | from the source to a wall |
 * | $R_w$ | `walls[].reflection` | 1 | its reflection factor; 1 unless given |
 * | $i$ | | | sets of walls: none, each, each two, all three |
 * | $s_i$ | | m | from the source to its image in that set of walls |
 * | $k$ | `frequencies` | rad/m | wave number $2\pi f/c$ |
 *
 * Walls that touch give 3.01 dB each. Equal distances to three walls give a dip of 11.4 dB, which unequal ones fill.
 *
 * @validity sources that are small against the wavelength; flat walls, much wider than a wavelength
 * @neglects all other walls, the phase of a reflection, the shadow of the box
 * @returns dB re free air for each frequency, −3000 dB where nothing is radiated
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`, `unknown-field`, `inconsistent`
 * @source allison1974 images of a small source, power by the resistive part of the load
 * @example boundaryPower([{ distance: '0 m' }, { distance: '60 cm' }], [30, 100, 200])
 */
export function boundaryPower(
  walls: readonly WallInput[],
  frequencies: ArrayLike<number>,
  air: Air = standardAir,
): Float64Array {
  const { speedOfSound } = readAir(air);
  const grid = frequencyGrid(frequencies);
  const read = readWalls(walls, grid);
  const away = imagesOf(read).map((image) => 2 * Math.hypot(...image.map((wall) => read[wall]!.distance)));
  const strengths = new Float64Array(away.length);
  return grid.map((f) => {
    imageStrengths(read, f, strengths);
    const k = (2 * Math.PI * f) / speedOfSound;
    const sum = away.reduce((total, s, i) => total + strengths[i]! * (s === 0 ? 1 : Math.sin(k * s) / (k * s)), 0);
    return 10 * Math.log10(Math.max(sum, LEAST));
  });
}
