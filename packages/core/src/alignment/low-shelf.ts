import { refuse } from '../fault/index.js';
import { denominatorOfMagnitude } from '../filter/from-magnitude.js';
import type { Alignment } from './alignment.js';

/**
 * The low-shelf alignment LS4: the response falls to a level, stays there over a stretch, and then falls with fourth order. It
 * reaches deeper than a flat one, at a lower level: a large box, tuned low, for a driver of low total quality factor.
 *
 * $$ \frac{1}{|G|^2} = L + (y - y_1)^3\left(y + \frac{L - 1}{y_1^3}\right), \quad y = \frac{1}{\omega^2},\quad L = 10^{d/10} $$
 *
 * At $y_1$, the middle of the shelf, the slope of the level is zero and so is its change: nothing of fourth order is flatter there.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $d$ | `depth` | dB | how far the shelf lies below the level far above |
 * | $y_1$ | `y1` | 1 | middle of the shelf; the driver decides it |
 *
 * @validity depths from 0.5 to 12 dB; $y_1$ up to that at which the response begins to have a hump above the shelf
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `out-of-range`
 * @source own (a point of no slope and no curvature at a chosen level)
 * @example solveAlignment(lowShelf(3), ventedFamily, { drivers: driver, QL: 7 })
 */
export function lowShelf(depth: number): Alignment {
  if (!(Number.isFinite(depth) && depth >= 0.5 && depth <= 12)) {
    const expected = 'a depth from 0.5 to 12 dB';
    refuse([{ code: 'out-of-range', path: 'depth', got: depth, expected, remedy: 'Choose one in this range.' }]);
  }
  const below = 10 ** (depth / 10) - 1;
  const target = (y: number): readonly number[] => {
    const e = below / y ** 3;
    return denominatorOfMagnitude([1, e - 3 * y, 3 * y * (y - e), y ** 2 * (3 * e - y), 1]);
  };
  const to = (3 * below) ** (1 / 4);
  return {
    name: 'LS4',
    order: 4,
    target,
    parameters: { depth },
    free: { from: 0.2 * to, to, told: (y1) => ({ y1 }) },
    sources: ['own'],
  };
}
