import { positive, readFields, si, type VolumeInput } from '@airspring/core/quantity';
import type { Size } from '@airspring/core/space';

/** Inner edges whose modes keep apart. */
export interface SpreadEdges {
  readonly inner: Size;
  /** The least distance between neighbours among the lowest modes, octaves. */
  readonly leastStep: number;
}

/** How many of the lowest modes are kept apart. */
const MODES = 8;
/** No edge is longer than this many times the shortest one. */
const LONGEST = 2.5;
/** Half waves along an edge that a mode among the lowest can have. */
const ORDERS = [0, 1, 2, 3, 4, 5];

const triples = ORDERS.flatMap((l) => ORDERS.flatMap((m) => ORDERS.map((n) => [l, m, n] as const))).filter(
  ([l, m, n]) => l + m + n > 0 && l + m + n <= 5,
);

/** The least step between neighbours among the lowest modes of a cuboid of edges 1, a, b, in octaves. */
function leastStep(a: number, b: number): number {
  const squares = triples.map(([l, m, n]) => l ** 2 + (m / a) ** 2 + (n / b) ** 2).sort((one, two) => one - two);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < MODES; i++) least = Math.min(least, Math.log2(squares[i]! / squares[i - 1]!) / 2);
  return least;
}

/**
 * The edges of a cuboid of a given inner volume whose lowest eight modes keep as far apart as they can, so that they do not add up at one
 * frequency.
 *
 * $$\max_{a,b}\;\min_{1\le i<8}\;\log_2\frac{f_{i+1}}{f_i}$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $a$, $b$ | 1 | edges over the shortest one, from 1 to 2.5 |
 * | $f_i$ | Hz | modes in rising order |
 *
 * @validity rigid walls, an empty box. Other measures of spread lead to other ratios: this one looks at the closest pair alone
 * @returns inner edges in m, the height the longest and the depth the shortest; and the least step
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source morse1968 normal modes of a rectangular room
 * @example spreadEdges({ innerVolume: '40 L' }).leastStep // octaves
 */
export function spreadEdges(input: { readonly innerVolume: VolumeInput }): SpreadEdges {
  const { innerVolume } = readFields('box', input, { innerVolume: positive('volume') });
  let best = { a: 1, b: 1, step: 0 };
  // A grid over all ratios, then finer ones about the best of each.
  for (let fineness = 0.02, from = [1, 1], to = [LONGEST, LONGEST]; fineness > 1e-7; fineness /= 10) {
    for (let a = from[0]!; a <= to[0]!; a += fineness)
      for (let b = Math.max(a, from[1]!); b <= to[1]!; b += fineness) {
        const step = leastStep(a, b);
        if (step > best.step) best = { a, b, step };
      }
    from = [Math.max(1, best.a - 2 * fineness), Math.max(1, best.b - 2 * fineness)];
    to = [Math.min(LONGEST, best.a + 2 * fineness), Math.min(LONGEST, best.b + 2 * fineness)];
  }
  const shortest = Math.cbrt(innerVolume / (best.a * best.b));
  const inner = {
    width: si('length', shortest * best.a),
    height: si('length', shortest * best.b),
    depth: si('length', shortest),
  };
  return { inner, leastStep: best.step };
}
