/** Complex arithmetic for the polynomials of the textbooks, apart from the library's. */

import type { Driver } from '@airspring/core/driver';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';

export type Complex = readonly [re: number, im: number];
export const plus = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d];
export const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
export const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const square = c * c + d * d;
  return [(a * c + b * d) / square, (b * c - a * d) / square];
};

/** A polynomial at s, its coefficients in rising powers. */
export const at = (s: Complex, ...coefficients: readonly number[]): Complex =>
  coefficients.reduceRight<Complex>((sum, coefficient) => plus(times(sum, s), [coefficient, 0]), [0, 0]);

export const product = (...factors: readonly Complex[]): Complex => factors.reduce(times, [1, 0]);
export const sum = (...terms: readonly Complex[]): Complex => terms.reduce(plus, [0, 0]);

/**
 * The flow for 1 V of a response p/p∞ over s/ω0. It is pressure over jω: far above all resonances a cone in a closed box is held
 * by its mass alone.
 */
export function flowOf(
  response: (s: Complex) => Complex,
  { Bl, Sd, Mms, Re }: Driver,
  f0: number,
  frequencies: ArrayLike<number>,
): ComplexColumn {
  const out = complexColumn(frequencies.length);
  Array.from(frequencies, (f, i) => {
    const scaled = times(response([0, f / f0]), [(Bl * Sd) / (Mms * Re), 0]);
    [out.re[i], out.im[i]] = over(scaled, [0, 2 * Math.PI * f]);
  });
  return out;
}
