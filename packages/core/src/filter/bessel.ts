import { bracketedRoot, polynomialOnImaginaryAxis } from '../numeric/index.js';
import { type FilterShape, refuseShapeOrder, rescaled } from './shape.js';

/** Coefficients of the reverse Bessel polynomial, ascending: $(2n-k)! / (2^{n-k}\,k!\,(n-k)!)$. */
export function besselPolynomial(order: number): readonly number[] {
  const list = [1];
  for (let k = order; k > 0; k--) list.unshift((list[0]! * k * (2 * order - k + 1)) / (2 * (order - k + 1)));
  return list;
}

/** Where a denominator that rises without ripple passes half the power of what it passes at 0. */
function halfPower(denominator: readonly number[]): number {
  const value = new Float64Array(2);
  const first = Math.abs(denominator[0]!);
  const root = bracketedRoot(
    (omega) => {
      polynomialOnImaginaryAxis(denominator, omega, value);
      return Math.hypot(value[0]!, value[1]!) / first - Math.SQRT2;
    },
    0,
    10,
    1e-16,
  );
  return root.ok ? root.x : Number.NaN;
}

/**
 * The Bessel shape of an order. The delay of the low-pass is maximally flat. The high-pass does not have that delay, but it rings
 * little. Half the power passes at the corner.
 *
 * $$ D(s) = \frac{\theta_n(\omega_3 s)}{\theta_n(0)}, \quad
 *    \theta_n(s) = \sum_{k=0}^{n} \frac{(2n-k)!}{2^{n-k}\,k!\,(n-k)!}\,s^k, \quad
 *    \left|\frac{\theta_n(j\omega_3)}{\theta_n(0)}\right|^2 = 2 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order, 1 to 8 |
 *
 * @validity orders from 1 to 8
 * @neglects nothing
 * @returns the record {@link FilterShape}
 * @throws InputError `not-finite`, `out-of-range`
 * @source thomson1949 reverse Bessel polynomials
 * @example highPass(besselShape(4), '24 Hz')
 */
export function besselShape(order: number): FilterShape {
  refuseShapeOrder(order);
  const polynomial = besselPolynomial(order);
  return { name: 'Bessel', denominator: rescaled(polynomial, halfPower(polynomial)), sources: ['thomson1949'] };
}
