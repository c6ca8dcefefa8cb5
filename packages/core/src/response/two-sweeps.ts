import type { ComplexColumn } from '../numeric/index.js';

/** Where the probes of a network lie between two sweeps of different resistance, for a third value of that resistance. */
export interface BetweenSweeps {
  /** The drive that the same flow through the resistance takes, over that of the first sweep. */
  readonly factor: number;
  /** The share of the way from the first sweep to the second that every probe has come, a complex number. */
  readonly shareRe: number;
  readonly shareIm: number;
}

/**
 * z, the step of a resistance between two sweeps times the admittance that it sees in series with itself. It follows from the flow
 * through the resistance, which falls by the factor 1 + z.
 */
export function stepAdmittance(
  first: ComplexColumn,
  second: ComplexColumn,
  i: number,
): readonly [re: number, im: number] {
  const [a, b, c, d] = [first.re[i]!, first.im[i]!, second.re[i]!, second.im[i]!];
  const size = c * c + d * d;
  return [(a * c + b * d - size) / size, (b * c - a * d) / size];
}

/**
 * Every probe at any value of one resistance, from two sweeps: each is a quotient of two linear functions of it. Where the resistance
 * has risen by ϱ steps,
 *
 * $$ U = \frac{U_0}{1 + \varrho z},\qquad X = X_0 + \frac{\varrho\,(1 + z)}{1 + \varrho z}\,(X_1 - X_0) $$
 */
export function betweenSweeps(re: number, im: number, steps: number): BetweenSweeps {
  const [turnRe, turnIm] = [1 + steps * re, steps * im];
  const turn = turnRe * turnRe + turnIm * turnIm;
  return {
    factor: Math.sqrt(turn),
    shareRe: (steps * ((1 + re) * turnRe + im * turnIm)) / turn,
    shareIm: (steps * (im * turnRe - (1 + re) * turnIm)) / turn,
  };
}
