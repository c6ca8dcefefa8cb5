import { InputError } from '../fault/index.js';
import { polynomialRoots } from '../numeric/index.js';
import { productOf } from './product.js';

/** The same as {@link denominatorOfMagnitude}, or `undefined` where the squared magnitude vanishes or is negative somewhere. */
export function stableDenominator(squared: readonly number[]): readonly number[] | undefined {
  if (!(squared.at(-1)! > 0) || !squared.every(Number.isFinite)) return undefined;
  const { re, im } = polynomialRoots(squared.map((value, k) => (k % 2 === 0 ? value : -value)));
  if (re.some((real, i) => im[i] === 0 && real <= 0)) return undefined;
  const factors = Array.from(re, (real, i): readonly number[] | undefined => {
    const imaginary = im[i]!;
    // A root s² gives the pair ±s: the one on the left is taken, and conjugates are taken together.
    if (imaginary === 0 && real > 0) return [Math.sqrt(real), 1];
    if (imaginary < 0) return undefined;
    const size = Math.sqrt(Math.hypot(real, imaginary));
    const left = Math.sqrt((size ** 2 + real) / 2);
    return [size ** 2, 2 * left, 1];
  }).filter((one) => one !== undefined);
  const scale = Math.sqrt(squared.at(-1)!);
  return productOf(factors).map((value) => value * scale);
}

/**
 * The denominator of a stable response whose squared magnitude is given:
 *
 * $$ |D(j\omega)|^2 = \sum_k c_k\,\omega^{2k} $$
 *
 * Its roots are those of $\sum_k c_k (-s^2)^k$ on the left of the imaginary axis.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $c_k$ | `squared` | 1 | coefficients in ascending powers of $\omega^2$; the last is positive |
 *
 * @validity squared magnitudes that are positive at every frequency; roots that lie apart
 * @neglects nothing
 * @returns coefficients in ascending powers of s
 * @throws InputError `inconsistent`
 * @source zverev1967 ch. 2, transfer function from the squared magnitude
 * @example denominatorOfMagnitude([1, 0, 0, 0, 1]) // that of the Butterworth shape of order 4
 */
export function denominatorOfMagnitude(squared: readonly number[]): readonly number[] {
  const denominator = stableDenominator(squared);
  if (denominator !== undefined) return denominator;
  const expected = 'a squared magnitude above 0 at every frequency';
  const remedy = 'Check the coefficients.';
  throw new InputError([{ code: 'inconsistent', path: 'squared', got: squared.join(', '), expected, remedy }]);
}
