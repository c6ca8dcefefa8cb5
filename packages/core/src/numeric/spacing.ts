import { type Fault, refuse } from '../fault/index.js';
import { unlessFinite, unlessPositive, unlessRising, unlessWhole } from './refusal.js';

const most = 2 ** 24;

/**
 * Numbers in equal ratios between two positive ends. Both ends are included exactly.
 *
 * $$ x_i = a^{1-t}\, b^t,\quad t = i/(n-1) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `from` | any | first, above 0 |
 * | $b$ | `to` | as from | last, above `from` |
 * | $n$ | `count` | 1 | how many, 2 to 2²⁴ |
 *
 * @neglects nothing
 * @returns n numbers that never fall
 * @throws InputError `not-finite`, `not-positive`, `unsorted`, `out-of-range`
 * @source dlmf §4.2(iv)
 * @example logarithmic(10, 1000, 3) // 10, 100, 1000
 */
export function logarithmic(from: number, to: number, count: number): Float64Array {
  refuse([...unlessPositive('from', from), ...unlessPositive('to', to), ...spanFaults(from, to, count)]);
  return column(from, to, count, (t) => from ** (1 - t) * to ** t);
}

/**
 * Numbers in equal steps between two ends. Both ends are included exactly.
 *
 * $$ x_i = (1-t)\,a + t\,b,\quad t = i/(n-1) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `from` | any | first |
 * | $b$ | `to` | as from | last, above `from` |
 * | $n$ | `count` | 1 | how many, 2 to 2²⁴ |
 *
 * @neglects nothing
 * @returns n numbers that never fall
 * @throws InputError `not-finite`, `unsorted`, `out-of-range`
 * @source dlmf §3.3(i)
 * @example linear(0, 1, 3) // 0, 0.5, 1
 */
export function linear(from: number, to: number, count: number): Float64Array {
  refuse([...unlessFinite('from', from), ...unlessFinite('to', to), ...spanFaults(from, to, count)]);
  return column(from, to, count, (t) => (1 - t) * from + t * to);
}

const spanFaults = (from: number, to: number, count: number): Fault[] => [
  ...unlessRising('to', from, to),
  ...unlessWhole('count', count, 2, most),
];

/** Keeps rounding from carrying a point past an end or behind its neighbour. */
function column(from: number, to: number, count: number, at: (t: number) => number): Float64Array {
  const x = new Float64Array(count);
  x[0] = from;
  for (let i = 1; i < count - 1; i++) x[i] = Math.min(to, Math.max(x[i - 1]!, at(i / (count - 1))));
  x[count - 1] = to;
  return x;
}
