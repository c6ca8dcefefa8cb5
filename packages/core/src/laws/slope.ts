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
  return unlike(declared, at, frequencies);
}

/** The same of the slopes by its parameters: by a relative change of each that is not zero. */
export function parameterSlopeFault(
  { parameterSlope, parameters }: Law,
  values: readonly number[],
  curvesOf: (values: readonly number[]) => Curves,
  frequencies: Float64Array,
): string | undefined {
  if (parameterSlope === undefined) return undefined;
  for (const [k, value] of values.entries()) {
    const declared = complexColumn(frequencies.length);
    parameterSlope(k, Float64Array.from(values), 0, frequencies, declared);
    const scale = value === 0 ? 1e-3 : value;
    for (const part of [declared.re, declared.im]) part.forEach((one, i) => (part[i] = one * scale));
    const at = (h: number) =>
      curvesOf(values.map((one, i) => (i === k ? one + scale * h : one)))(frequencies)[0] as ComplexColumn;
    const fault = unlike(declared, at, frequencies);
    if (fault !== undefined) return `by ${parameters[k]}: ${fault}`;
  }
  return undefined;
}

/** Where declared slopes are not those of a curve that moves by a small step. */
function unlike(
  declared: ComplexColumn,
  at: (h: number) => ComplexColumn,
  frequencies: Float64Array,
): string | undefined {
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
