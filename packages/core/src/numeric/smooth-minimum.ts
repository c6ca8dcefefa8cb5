import { boundedMinimum, type Minimum } from './minimise.js';

/** How often the distance between the points may be halved. */
const mostHalvings = 8;

/**
 * Minimum of a smooth function between two ends, found to about 1e-10 of x as the zero of its slope. A minimum is flat, so
 * values alone cannot place it so well: {@link boundedMinimum} stops at 1e-8. For a maximum, pass −f.
 *
 * $$ f'(x) \approx \frac{45\,(f_1 - f_{-1}) - 9\,(f_2 - f_{-2}) + (f_3 - f_{-3})}{60\,h},\qquad f_i = f(x + ih) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f$ | `f` | any | the function |
 * | $[a, b]$ | `low`, `high` | as x | bounds, rising: the two neighbours of the smallest sample of a column |
 * | $\tau$ | `tolerance` | 1 | relative, of x; 1e-10 by default |
 *
 * Newton steps lead to the zero of the slope. The distance h is halved until x stays within the tolerance, or until rounding
 * moves x more than the last h did.
 *
 * @validity one minimum between the ends, and seven derivatives; at a kink or at an end the result is that of
 *   {@link boundedMinimum}, with `converged` false
 * @neglects anything below the tolerance
 * @returns the point, its value, and whether it settled within the tolerance
 * @throws InputError `not-finite`, `not-positive`, `unsorted`
 * @source dlmf §3.4 (derivatives from seven points)
 * @example smoothMinimum((x) => Math.cosh(x - 1), 0, 3) // x = 1
 */
export function smoothMinimum(f: (x: number) => number, low: number, high: number, tolerance = 1e-10): Minimum {
  const coarse = boundedMinimum(f, low, high, Math.max(tolerance, 1e-6));
  let { x, evaluations } = coarse;
  let before = Infinity;
  const room = Math.min(x - low, high - x) / 3.5;
  for (let h = room, halved = 0; halved <= mostHalvings; h /= 2, halved++) {
    let nearer = x;
    for (let step = 0; step < 2; step++) {
      nearer -= newtonStep(f, nearer, h);
      evaluations += 7;
      if (!(Math.abs(nearer - coarse.x) <= room / 8)) break;
    }
    if (!(Math.abs(nearer - coarse.x) <= room / 8)) continue;
    const change = Math.abs(nearer - x);
    if (halved > 0 && change <= tolerance * Math.abs(nearer)) {
      return { x: nearer, value: f(nearer), evaluations: evaluations + 1, converged: true };
    }
    if (halved > 1 && change > before) break;
    [x, before] = [nearer, change];
  }
  return { ...coarse, evaluations, converged: false };
}

/** Slope over curvature from seven points at a distance h. */
function newtonStep(f: (x: number) => number, x: number, h: number): number {
  const at = (i: number) => f(x + i * h);
  const [a, b, c, middle, d, e, g] = [at(-3), at(-2), at(-1), f(x), at(1), at(2), at(3)] as const;
  const slope = (45 * (d - c) - 9 * (e - b) + (g - a)) / 60;
  const curvature = (270 * (d + c) - 27 * (e + b) + 2 * (g + a) - 490 * middle) / 180;
  return (h * slope) / curvature;
}
