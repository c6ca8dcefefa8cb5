import type { Law } from '../network/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import type { Curves } from './curves.js';

const STEP = 1e-4;

/** Finds where a declared slope differs from the difference quotient of the values, extrapolated once (@source richardson1927). */
export function slopeFault(
  { slope }: Law,
  values: readonly number[],
  curves: Curves,
  frequencies: Float64Array,
): string | undefined {
  if (slope === undefined) return undefined;
  const declared = complexColumn(frequencies.length);
  slope(Float64Array.from(values), 0, frequencies, declared);
  const at = (h: number) => curves(frequencies.map((f) => f * Math.exp(h)))[0] as ComplexColumn;
  const [base, ...[a, b, c, d]] = [0, STEP, -STEP, STEP / 2, -STEP / 2].map(at) as [
    ComplexColumn,
    ComplexColumn,
    ComplexColumn,
    ComplexColumn,
    ComplexColumn,
  ];
  const quotient = (part: 're' | 'im', i: number) => {
    const wide = (a[part][i]! - b[part][i]!) / (2 * STEP);
    const narrow = (c[part][i]! - d[part][i]!) / STEP;
    return (4 * narrow - wide) / 3;
  };
  for (let i = 0; i < frequencies.length; i++) {
    const [re, im] = [quotient('re', i), quotient('im', i)];
    const apart = Math.hypot(declared.re[i]! - re, declared.im[i]! - im);
    const size = Math.hypot(re, im) + Math.hypot(base.re[i]!, base.im[i]!);
    if (!(apart <= 1e-6 * size))
      return `${declared.re[i]} + ${declared.im[i]} j, and it is ${re} + ${im} j at ${frequencies[i]} Hz`;
  }
  return undefined;
}
