import { type Impossible, impossible, refuse } from '../fault/index.js';
import { unlessFinite, unlessFiniteColumn, unlessPositive, unlessRising } from './refusal.js';

/** A root found between two ends. */
export interface BracketedRoot {
  readonly ok: true;
  readonly x: number;
  /** Value of the function at x. */
  readonly residual: number;
  /** Number of evaluations of the function. */
  readonly evaluations: number;
}

/** Upper limit of evaluations; halving from the largest number to the smallest takes 2100. */
const most = 5000;

/**
 * Root of a continuous function between two ends at which its signs differ, by Brent's method: inverse quadratic or linear
 * interpolation as long as it shrinks the bracket, and halving otherwise.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f$ | `f` | any | the function |
 * | $[a, b]$ | `low`, `high` | as x | bracket, rising |
 * | $\tau$ | `tolerance` | as x | half width of the last bracket, apart from rounding of x; may be 0 |
 *
 * @neglects all roots but one when there are several
 * @returns the root, or why there is none: the function has the same sign at both ends, or its value is NaN
 * @throws InputError `not-finite`, `not-positive`, `unsorted`
 * @source dlmf §3.8(iii)
 * @source brent1973 ch. 4
 * @example bracketedRoot((x) => x * x - 2, 0, 2) // x = 1.4142135623731
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 0,
): BracketedRoot | Impossible {
  refuse([
    ...unlessFinite('low', low),
    ...unlessFinite('high', high),
    ...unlessRising('high', low, high),
    ...(tolerance === 0 ? [] : unlessPositive('tolerance', tolerance)),
  ]);
  // b is the best point, a the one before it, c the other side of the bracket.
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  let evaluations = 2;
  if (fa === 0) return { ok: true, x: a, residual: 0, evaluations };
  if (fb === 0) return { ok: true, x: b, residual: 0, evaluations };
  const notANumber = (x: number) => impossible('no-value', `The function has no value at ${x}.`);
  if (Number.isNaN(fa)) return notANumber(a);
  if (Number.isNaN(fb)) return notANumber(b);
  if (fa > 0 === fb > 0)
    return impossible('no-sign-change', `The function is ${fa} at ${a} and ${fb} at ${b}; its sign does not change.`);
  let c = a;
  let fc = fa;
  let step = b - a;
  let before = step;
  while (evaluations < most) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      before = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + Math.max(tolerance / 2, Number.MIN_VALUE);
    const half = c / 2 - b / 2;
    if (fb === 0 || Math.abs(half) <= least) break;
    const trial = interpolated(a, b, c, fa, fb, fc);
    // The step is taken only inside the bracket, and only when steps shrink at least as fast as two halvings.
    if (Math.abs(before) >= least && Math.abs(fa) > Math.abs(fb) && withinBracket(trial, half, before, least)) {
      before = step;
      step = trial;
    } else {
      step = half;
      before = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > least ? step : half > 0 ? least : -least;
    fb = f(b);
    evaluations++;
    if (Number.isNaN(fb)) return notANumber(b);
  }
  return { ok: true, x: b, residual: fb, evaluations };
}

/** The step from b to the root of the curve through the last points. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa;
  if (a === c) return ((c - b) * s) / (s - 1);
  const q = fa / fc;
  const r = fb / fc;
  return (-s * ((c - b) * q * (q - r) - (b - a) * (r - 1))) / ((q - 1) * (r - 1) * (s - 1));
}

const withinBracket = (trial: number, half: number, before: number, least: number): boolean =>
  trial / half > 0 && Math.abs(trial) < Math.min(1.5 * Math.abs(half) - least / 2, Math.abs(before) / 2);

/**
 * Finds where a column changes sign: every index i with a root between elements i and i + 1, or exactly at i.
 *
 * @neglects pairs of roots between two neighbouring elements
 * @returns the indices, in increasing order
 * @throws InputError `empty`, `not-finite`
 * @source dlmf §3.8(iii)
 * @example signChanges([-1, 2, 3, -1]) // 0, 2
 */
export function signChanges(values: ArrayLike<number>): number[] {
  refuse(unlessFiniteColumn('values', values));
  return Array.from(values).flatMap((here, i) => {
    const next = values[i + 1] ?? here;
    return here === 0 || (here < 0 && next > 0) || (here > 0 && next < 0) ? [i] : [];
  });
}
