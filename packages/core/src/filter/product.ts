import { polynomialProduct } from '../numeric/index.js';

/** The product of factors, each in ascending powers of s. */
export const productOf = (factors: readonly (readonly number[])[]): readonly number[] =>
  Array.from(factors.reduce<ArrayLike<number>>(polynomialProduct, [1]));

/** The denominator of a high-pass from that of the low-pass with the same shape: its coefficients in reverse. */
export const highPassOf = (lowPass: readonly number[]): readonly number[] => [...lowPass].reverse();
