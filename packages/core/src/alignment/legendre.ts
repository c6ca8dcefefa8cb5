import { legendreDenominator } from '../filter/legendre.js';
import { highPassOf } from '../filter/product.js';
import type { Alignment } from './alignment.js';
import { refuseOrder } from './refusals.js';

/**
 * The Legendre alignment of an order, of Papoulis: the steepest one that falls without ripple.
 *
 * $$ |G(j\omega)|^2 = \frac{1}{1 + L_n(1/\omega^2)} $$
 *
 * $L_n$ is the integral of a sum of Legendre polynomials, squared: of all monotonic polynomials with $L_n(1) = 1$ it has the
 * greatest slope at 1.
 *
 * @validity orders from 2 to 8
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `not-finite`, `out-of-range`
 * @source papoulis1958 L_n from Legendre polynomials
 * @example solveAlignment(legendre(4), ventedFamily, { drivers: driver }, { addResistance: true })
 */
export function legendre(order: number): Alignment {
  refuseOrder(order, 8);
  const denominator = highPassOf(legendreDenominator(order));
  return { name: `L${order}`, order, target: () => denominator, parameters: {}, sources: ['papoulis1958'] };
}
