import { type Fault, refuse } from '../fault/index.js';
import { decimalText, positive, readFields } from '../quantity/index.js';
import { butterworthDampings } from './butterworth.js';
import { productOf } from './product.js';
import { type FilterShape, refuseShapeOrder, rescaled } from './shape.js';

/**
 * The Butterworth poles with their real parts times k, which lie on an ellipse whose longer half is 1: the denominator of a low-pass
 * whose first coefficient is 1.
 */
export function ellipsePolynomial(order: number, k: number): readonly number[] {
  const pairs = butterworthDampings(order).map((damping) => [
    (k * damping) ** 2 + 1 - damping ** 2,
    2 * k * damping,
    1,
  ]);
  const lowPass = productOf(order % 2 === 1 ? [...pairs, [k, 1]] : pairs);
  return lowPass.map((value) => value / lowPass[0]!);
}

/** The k of a ripple in dB. */
export const ellipseOf = (order: number, ripple: number): number =>
  Math.tanh(Math.asinh(1 / Math.sqrt(10 ** (ripple / 10) - 1)) / order);

/** With more ripple than half the power the corner would lie within the ripple. */
const MOST_RIPPLE = 3;
const shape = { ripple: positive('level') };

/**
 * The Chebyshev shape of an order, the steepest with even ripple. Half the power of what passes far away passes at the corner. Far
 * away an odd order has the top of the ripple and an even order its bottom, so that an even order lifts what lies near the corner.
 *
 * $$ |D(j\omega)|^2 = \frac{1 + \varepsilon^2 T_n^2(\omega/\omega_r)}{1 + \varepsilon^2 T_n^2(0)}, \quad
 *    \varepsilon^2 = 10^{r/10} - 1, \quad
 *    \frac{1}{\omega_r} = \cosh\!\left(\tfrac1n\,\mathrm{arcosh}\sqrt{\varepsilon^{-2} + 2\,T_n^2(0)}\right) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order, 2 to 8 |
 * | $r$ | `ripple` | dB | height of the ripple |
 * | $T_n$ | | 1 | Chebyshev polynomial; at 0 it is 0 or ±1 |
 *
 * @validity orders from 2 to 8; ripple of 0.001 to 3 dB
 * @neglects nothing
 * @returns the record {@link FilterShape}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source zverev1967 ch. 2, |H|² = 1/(1 + ε² T_n²(ω))
 * @example highPass(chebyshevShape(4, { ripple: 0.5 }), '24 Hz')
 */
export function chebyshevShape(order: number, options: { readonly ripple: number }): FilterShape {
  refuseShapeOrder(order, 2);
  const { ripple } = readFields('chebyshev', options, shape);
  if (!(ripple >= 0.001 && ripple <= MOST_RIPPLE)) {
    const expected = `a ripple of 0.001 to ${MOST_RIPPLE} dB`;
    const remedy = 'Choose one in this range.';
    const fault: Fault = { code: 'out-of-range', path: 'chebyshev.ripple', got: ripple, expected, remedy };
    refuse([fault]);
  }
  const inverse = 1 / (10 ** (ripple / 10) - 1);
  const corner = Math.cosh(Math.acosh(Math.sqrt(inverse + (order % 2 === 0 ? 2 : 0))) / order);
  // The longer half of the ellipse, over the edge of the ripple.
  const half = Math.cosh(Math.asinh(Math.sqrt(inverse)) / order);
  return {
    name: `Chebyshev with a ripple of ${decimalText(ripple, 3)} dB`,
    denominator: rescaled(ellipsePolynomial(order, ellipseOf(order, ripple)), corner / half),
    sources: ['zverev1967'],
  };
}
