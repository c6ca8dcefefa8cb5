import { productOf } from './product.js';
import { type FilterShape, refuseShapeOrder } from './shape.js';

/** Half the damping of each pole pair of the Butterworth shape of an order. */
export const butterworthDampings = (order: number): readonly number[] =>
  Array.from({ length: Math.floor(order / 2) }, (_, i) => Math.sin((Math.PI * (2 * i + 1)) / (2 * order)));

/** The Butterworth polynomial of an order, which reads the same from both ends. */
export function butterworthPolynomial(order: number): readonly number[] {
  const pairs = butterworthDampings(order).map((damping) => [1, 2 * damping, 1]);
  return productOf(order % 2 === 1 ? [...pairs, [1, 1]] : pairs);
}

/**
 * The Butterworth shape of an order, which is maximally flat and passes half the power at its corner.
 *
 * $$ |D(j\omega)|^2 = 1 + \omega^{2n}, \quad Q_i = \frac{1}{2 \sin\frac{(2i-1)\pi}{2n}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order, 1 to 8 |
 * | $Q_i$ | | 1 | quality factors of the $\lfloor n/2 \rfloor$ second-order sections |
 *
 * @validity orders from 1 to 8
 * @neglects nothing
 * @returns the record {@link FilterShape}
 * @throws InputError `not-finite`, `out-of-range`
 * @source zverev1967 ch. 2, |H|² = 1/(1 + ω²ⁿ)
 * @example highPass(butterworthShape(4), '24 Hz').name // 'High-pass of order 4 at 24 Hz, Butterworth'
 */
export function butterworthShape(order: number): FilterShape {
  refuseShapeOrder(order);
  return { name: 'Butterworth', denominator: butterworthPolynomial(order), sources: ['zverev1967'] };
}
