import { type Fault, refuse } from '../fault/index.js';
import { unlessFiniteColumn, unlessPositive, unlessRising, unlessWhole } from './refusal.js';

/** The minimum found in several dimensions. */
export interface SimplexMinimum {
  readonly x: readonly number[];
  readonly value: number;
  readonly evaluations: number;
  /** False when the allowed number of evaluations ran out first. */
  readonly converged: boolean;
}

/** Options of {@link simplexMinimum}. */
export interface SimplexOptions {
  /** Size at which the simplex stops, as a fraction of the range of each variable; 1e-7 by default. */
  readonly tolerance?: number;
  /** Number of evaluations allowed; 400 per dimension by default. */
  readonly evaluations?: number;
}

interface Corner {
  readonly x: readonly number[];
  readonly value: number;
}

/**
 * Minimum of a function of several bounded variables, found without derivatives by the simplex of Nelder and Mead. It uses
 * the coefficients of Gao and Han for many dimensions, and clips points to the bounds. Because a clipped simplex can go flat
 * against a bound, a fresh one starts from the best point after each has shrunk, until that no longer helps.
 * It is deterministic. NaN counts as infinitely bad.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f$ | `f` | any | the function |
 * | $x_0$ | `start` | as x | first point, clipped to the bounds |
 * | | `low`, `high` | as x | bounds, rising, one for each variable |
 *
 * @validity up to about 10 variables; it finds a minimum near the start, not necessarily the global one
 * @neglects a guarantee: no proof of convergence exists for this method
 * @returns the point and its value
 * @throws InputError `empty`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unsorted`
 * @source nelder1965 whole paper
 * @source gao2012 §2
 * @example simplexMinimum(([x, y]) => (x! - 1) ** 2 + (y! - 2) ** 2, [0, 0], [-5, -5], [5, 5]) // x = 1, 2
 */
export function simplexMinimum(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  low: readonly number[],
  high: readonly number[],
  options: SimplexOptions = {},
): SimplexMinimum {
  const { tolerance = 1e-7, evaluations: most = 400 * start.length } = options;
  refuse([
    ...unlessFiniteColumn('start', start),
    ...unlessFiniteColumn('low', low),
    ...unlessFiniteColumn('high', high),
    ...sameLength('low', low, start),
    ...sameLength('high', high, start),
    ...high.flatMap((h, i) => unlessRising(`high[${i}]`, low[i] ?? -Infinity, h)),
    ...unlessPositive('tolerance', tolerance),
    ...(start.length > 0 ? unlessWhole('options.evaluations', most, 1, 1e9) : []),
  ]);
  let evaluations = 0;
  const corner = (at: readonly number[]): Corner => {
    const x = at.map((v, i) => Math.min(high[i]!, Math.max(low[i]!, v)));
    evaluations++;
    const value = f(x);
    return { x, value: Number.isNaN(value) ? Infinity : value };
  };
  let best = corner(start);
  for (let size = 0.1; evaluations < most; size = size > 0.02 ? size / 4 : 0.1) {
    const found = shrink(best, size);
    const still = !(found.value < best.value - 1e-10 * Math.abs(best.value));
    if (found.value < best.value) best = found;
    if (still && evaluations < most) return { ...best, evaluations, converged: true };
  }
  return { ...best, evaluations, converged: false };

  /** Runs one simplex from its initial size until it is small. */
  function shrink(from: Corner, size: number): Corner {
    const n = from.x.length;
    const expand = 1 + 2 / n;
    const contract = 0.75 - 1 / (2 * n);
    const reduce = n === 1 ? 0.5 : 1 - 1 / n;
    const corners = [from];
    for (let i = 0; i < n && evaluations < most; i++) {
      const edge = size * (high[i]! / 2 - low[i]! / 2) * 2;
      const side = from.x[i]! + edge > high[i]! ? -edge : edge;
      corners.push(corner(from.x.map((v, k) => (k === i ? v + side : v))));
    }
    while (corners.length === n + 1 && evaluations < most) {
      corners.sort((p, q) => p.value - q.value);
      const first = corners[0]!;
      const worst = corners[n]!;
      const small = (c: Corner) => c.x.every((v, i) => Math.abs(v - first.x[i]!) <= tolerance * (high[i]! - low[i]!));
      if (corners.every(small)) break;
      const middle = first.x.map((_, i) => corners.reduce((s, c) => s + c.x[i]! / n, -worst.x[i]! / n));
      const along = (t: number) => corner(middle.map((m, i) => m + t * (m - worst.x[i]!)));
      const reflected = along(1);
      let next = reflected;
      if (reflected.value < first.value) {
        const further = along(expand);
        if (further.value < reflected.value) next = further;
      } else if (!(reflected.value < corners[n - 1]!.value)) {
        next = along(reflected.value < worst.value ? contract : -contract);
      }
      if (next.value < worst.value) corners[n] = next;
      else
        for (let k = 1; k <= n; k++)
          corners[k] = corner(corners[k]!.x.map((v, i) => first.x[i]! + reduce * (v - first.x[i]!)));
    }
    return corners.reduce((p, q) => (q.value < p.value ? q : p));
  }
}

const sameLength = (path: string, list: readonly number[], start: readonly number[]): Fault[] =>
  list.length === start.length
    ? []
    : [
        {
          code: 'inconsistent',
          path,
          got: list.length,
          expected: `${start.length} numbers, as in start`,
          remedy: 'Give one bound for each variable.',
        },
      ];
