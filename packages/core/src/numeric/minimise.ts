import { refuse } from '../fault/index.js';
import { unlessFinite, unlessPositive, unlessRising } from './refusal.js';

/** The least value found on a line. */
export interface Minimum {
  readonly x: number;
  readonly value: number;
  /** How often the function was asked. */
  readonly evaluations: number;
  /** False when the allowed number of evaluations came first. */
  readonly converged: boolean;
}

const golden = (3 - Math.sqrt(5)) / 2;

/**
 * Minimum of a function between two ends by Brent's method: a parabola through the three best points while its steps
 * shrink, else the golden section. A value that is not a number counts as infinitely bad.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f$ | `f` | any | the function |
 * | $[a, b]$ | `low`, `high` | as x | bounds, rising |
 * | $\tau$ | `tolerance` | 1 | of x, relative; 1e-8 when left out: a minimum is flat, and less is noise |
 *
 * @validity one minimum between the ends; of several, one is found
 * @neglects the ends themselves: they are approached to the tolerance
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
  // x best, w second, v third.
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
