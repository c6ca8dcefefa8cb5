import { polynomialProduct } from '../numeric/index.js';
import type { Alignment } from './alignment.js';

/**
 * The Butterworth alignment of an order: maximally flat, B2 of a closed box, B4 of a vented one.
 *
 * $$ |G(j\omega)|^2 = \frac{\omega^{2n}}{\omega^{2n} + 1} $$
 *
 * @validity orders from 2
 * @neglects nothing
 * @returns the alignment
 * @source zverev1967 ch. 2
 * @example solveAlignment(butterworth(4), ventedFamily, { drivers: driver, QL: 7 })
 */
export function butterworth(order: number): Alignment {
  const pairs = Array.from({ length: Math.floor(order / 2) }, (_, i) => [
    1,
    2 * Math.sin((Math.PI * (2 * i + 1)) / (2 * order)),
    1,
  ]);
  const denominator = Array.from(
    [...pairs, ...(order % 2 === 1 ? [[1, 1]] : [])].reduce<ArrayLike<number>>(polynomialProduct, [1]),
  );
  return { name: `B${order}`, order, target: () => denominator, parameters: {}, sources: ['zverev1967'] };
}
