/**
 * Product of two polynomials with real coefficients in ascending powers.
 *
 * $$ c_k = \sum_i a_i\, b_{k-i} $$
 *
 * @returns coefficients in ascending powers, one list of length `a.length + b.length - 1`; empty when a factor is
 * @source dlmf §1.11
 * @example polynomialProduct([1, 1], [1, -1]) // 1, 0, -1
 */
export function polynomialProduct(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  const product = new Float64Array(a.length && b.length ? a.length + b.length - 1 : 0);
  for (let i = 0; i < a.length; i++) for (let k = 0; k < b.length; k++) product[i + k]! += a[i]! * b[k]!;
  return product;
}

/**
 * Sum of two polynomials with real coefficients in ascending powers.
 *
 * @returns coefficients in ascending powers, as many as the longer list has
 * @source dlmf §1.11
 * @example polynomialSum([1, 2], [1]) // 2, 2
 */
export function polynomialSum(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  const sum = new Float64Array(Math.max(a.length, b.length));
  for (let k = 0; k < sum.length; k++) sum[k] = (a[k] ?? 0) + (b[k] ?? 0);
  return sum;
}

/**
 * Derivative of a polynomial with real coefficients in ascending powers.
 *
 * $$ c_k = (k+1)\, a_{k+1} $$
 *
 * @returns coefficients in ascending powers, one fewer than given
 * @source dlmf §1.4
 * @example polynomialDerivative([5, 3, 2]) // 3, 4
 */
export function polynomialDerivative(a: ArrayLike<number>): Float64Array {
  const derivative = new Float64Array(Math.max(a.length - 1, 0));
  for (let k = 0; k < derivative.length; k++) derivative[k] = (k + 1) * a[k + 1]!;
  return derivative;
}

/** Value of a real polynomial with coefficients in ascending powers, by Horner's scheme. A kernel. */
export function polynomialValue(coefficients: ArrayLike<number>, x: number): number {
  let value = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) value = value * x + coefficients[k]!;
  return value;
}

/**
 * Value of a real polynomial at $s = j\omega$, for exp(+jωt). Even and odd powers have one Horner scheme each, in $-\omega^2$.
 *
 * $$ p(j\omega) = \sum_m a_{2m}(-\omega^2)^m + j\omega \sum_m a_{2m+1}(-\omega^2)^m $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a_k$ | `coefficients` | any | real coefficients, ascending powers of $s$ |
 * | $\omega$ | `omega` | rad/s | angular frequency, or any normalised one |
 *
 * @neglects nothing; a kernel that checks nothing and allocates nothing
 * @returns nothing; real part in `out[0]`, imaginary part in `out[1]`
 * @source dlmf §1.11
 * @example polynomialOnImaginaryAxis([1, 2, 1], 1, out) // out = 0, 2
 */
export function polynomialOnImaginaryAxis(coefficients: ArrayLike<number>, omega: number, out: Float64Array): void {
  const x = -omega * omega;
  const last = coefficients.length - 1;
  let even = 0;
  let odd = 0;
  for (let k = last - (last & 1); k >= 0; k -= 2) even = even * x + coefficients[k]!;
  for (let k = last - 1 + (last & 1); k >= 1; k -= 2) odd = odd * x + coefficients[k]!;
  out[0] = even;
  out[1] = odd * omega;
}

/**
 * Values of a real polynomial at $s = j\omega$ for a column of $\omega$: {@link polynomialOnImaginaryAxis} point by point.
 *
 * Each element of `omega` is first multiplied by `unit`.
 *
 * @returns nothing; fills `re[0…omega.length)` and `im[0…omega.length)`
 * @source dlmf §1.11
 * @example polynomialColumnOnImaginaryAxis([1, 2, 1], omega, re, im)
 */
export function polynomialColumnOnImaginaryAxis(
  coefficients: ArrayLike<number>,
  omega: Float64Array,
  re: Float64Array,
  im: Float64Array,
  unit = 1,
): void {
  const last = coefficients.length - 1;
  const lastEven = last - (last & 1);
  const lastOdd = (last & 1) === 1 ? last : last - 1;
  for (let i = 0; i < omega.length; i++) {
    const w = omega[i]! * unit;
    const x = -w * w;
    let even = 0;
    let odd = 0;
    for (let k = lastEven; k >= 0; k -= 2) even = even * x + coefficients[k]!;
    for (let k = lastOdd; k >= 1; k -= 2) odd = odd * x + coefficients[k]!;
    re[i] = even;
    im[i] = odd * w;
  }
}
