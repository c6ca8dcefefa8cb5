import type { Alignment } from './alignment.js';
import { refuseOrder } from './refusals.js';
import { productOf } from './sections.js';
import { flatWithZeros } from './with-zeros.js';

/** Half the damping of each pole pair of the Butterworth shape of an order. */
export const butterworthDampings = (order: number): readonly number[] =>
  Array.from({ length: Math.floor(order / 2) }, (_, i) => Math.sin((Math.PI * (2 * i + 1)) / (2 * order)));

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
  const pairs = butterworthDampings(order).map((damping) => [1, 2 * damping, 1]);
  const denominator = productOf(order % 2 === 1 ? [...pairs, [1, 1]] : pairs);
  return {
    name: `B${order}`,
    order,
    withZeros: true,
    target: (_, numerator) => (numerator ? flatWithZeros(numerator) : denominator),
    parameters: {},
    sources: ['zverev1967'],
  };
}
