import { besselPolynomial } from '../filter/bessel.js';
import { highPassOf } from '../filter/product.js';
import type { Alignment } from './alignment.js';
import { refuseOrder } from './refusals.js';

/**
 * The Bessel alignment of an order: the low-pass of maximally flat delay, turned into a high-pass. BE4 of a vented box.
 *
 * $$ D_{lp}(s) = \sum_{k=0}^{n} \frac{(2n-k)!}{2^{n-k}\,k!\,(n-k)!}\,s^k $$
 *
 * The high-pass does not have the flat delay of the low-pass, but its damping. Its step response swings back like that of every
 * high-pass of its order, but less than that of the Butterworth shape: by 29 % and not 35 % for order 4, and it comes to rest sooner.
 *
 * @validity orders from 2 to 10
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `not-finite`, `out-of-range`
 * @source thomson1949 reverse Bessel polynomials
 * @example solveAlignment(bessel(2), closedFamily, { drivers: driver })
 */
export function bessel(order: number): Alignment {
  refuseOrder(order);
  const lowPass = besselPolynomial(order);
  const denominator = highPassOf(lowPass.map((value) => value / lowPass[0]!));
  return { name: `BE${order}`, order, target: () => denominator, parameters: {}, sources: ['thomson1949'] };
}
