import { butterworthPolynomial } from '../filter/butterworth.js';
import type { Alignment } from './alignment.js';
import { refuseOrder } from './refusals.js';
import { flatWithZeros } from './with-zeros.js';

/**
 * The Butterworth alignment of an order, which is maximally flat: B2 of a closed box, B4 of a vented one.
 *
 * $$ |G(j\omega)|^2 = \frac{\omega^{2n}}{\omega^{2n} + 1} $$
 *
 * With a notch it is as flat as the zeros of the box leave it: $|D|^2 - |N|^2$ is a constant.
 *
 * @validity orders from 2 to 10
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `not-finite`, `out-of-range`
 * @source zverev1967 ch. 2
 * @example solveAlignment(butterworth(4), ventedFamily, { drivers: driver, QL: 7 }, { addResistance: true })
 */
export function butterworth(order: number): Alignment {
  refuseOrder(order);
  const denominator = butterworthPolynomial(order);
  return {
    name: `B${order}`,
    order,
    withZeros: true,
    target: (_, numerator) => (numerator ? flatWithZeros(numerator) : denominator),
    parameters: {},
    sources: ['zverev1967'],
  };
}
