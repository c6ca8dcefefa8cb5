import { refuse } from '../fault/index.js';
import { unlessFinite, unlessPositive, unlessRising } from './refusal.js';

/** The minimum found along a line. */
export interface Minimum {
  readonly x: number;
  readonly value: number;
  /** Number of evaluations of the function. */
  readonly evaluations: number;
  /** False when the allowed number of evaluations ran out first. */
  readonly converged: boolean;
}

const golden = (3 - Math.sqrt(5)) / 2;

/**
 * Minimum of a function between two ends by Brent's method. It uses a parabola through the three best points while the steps
 * shrink, and the golden section otherwise. NaN counts as infinitely bad.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f$ | `f` | any | the function |
 * | $[a, b]$ | `low`, `high` | as x | bounds, rising |
 * | $\tau$ | `tolerance` | 1 | relative, of x; 1e-8 by default, because a minimum is flat and anything finer is noise |
 *
 * @validity one minimum between the ends; if there are several, it finds one of them
 * @neglects the ends themselves, which are approached to within the tolerance
 * @returns the point and its value
 * @throws InputError `not-finite`, `not-positive`, `unsorted`
 * @source brent1973 ch. 5
 * @example boundedMinimum((x) => (x - 1) ** 2, 0, 3) // x = 1
 */
export function boundedMinimum(f: (x: number) => number, low: number, high: number, tolerance = 1e-8): Minimum {
  refuse([
    ...unlessFinite('low', low),
    ...unlessFinite('high', high),
    ...unlessRising('high', low, high),
    ...unlessPositive('tolerance', tolerance),
  ]);
  const most = 200;
  let evaluations = 0;
  const ask = (at: number) => {
    evaluations++;
    const value = f(at);
    return Number.isNaN(value) ? Infinity : value;
  };
  let a = low;
  let b = high;
  // x is the best point, w the second best, v the third.
  let x = a + golden * b - golden * a;
  let fx = ask(x);
  let [w, fw, v, fv] = [x, fx, x, fx];
  let step = 0;
  let before = 0;
  while (evaluations < most) {
    const middle = a / 2 + b / 2;
    const least = tolerance * Math.abs(x) + 1e-12 * (high / 2 - low / 2) + Number.MIN_VALUE;
    if (Math.abs(x - middle) <= 2 * least - (b / 2 - a / 2)) return { x, value: fx, evaluations, converged: true };
    const r = (x - w) * (fx - fv);
    const q = (x - v) * (fx - fw);
    const trial = ((x - v) * q - (x - w) * r) / (2 * (r - q));
    if (Math.abs(trial) < Math.abs(before) / 2 && x + trial > a && x + trial < b) {
      before = step;
      step = x + trial - a < 2 * least || b - (x + trial) < 2 * least ? (x < middle ? least : -least) : trial;
    } else {
      before = x < middle ? b - x : a - x;
      step = golden * before;
    }
    const u = x + (Math.abs(step) >= least ? step : step > 0 ? least : -least);
    const fu = ask(u);
    if (fu <= fx) {
      if (u < x) b = x;
      else a = x;
      [v, fv, w, fw, x, fx] = [w, fw, x, fx, u, fu];
    } else {
      if (u < x) a = u;
      else b = u;
      if (fu <= fw || w === x) [v, fv, w, fw] = [w, fw, u, fu];
      else if (fu <= fv || v === x || v === w) [v, fv] = [u, fu];
    }
  }
  return { x, value: fx, evaluations, converged: false };
}
