import type { Alignment, FreeParameter } from './alignment.js';
import { butterworthDampings } from './butterworth.js';
import { highPassOf, productOf } from './sections.js';

/**
 * The Butterworth poles with their real parts times k: they lie on an ellipse. The low-pass prototype is turned into a high-pass.
 */
function ellipse(order: number, k: number): readonly number[] {
  const pairs = butterworthDampings(order).map((damping) => [
    (k * damping) ** 2 + 1 - damping ** 2,
    2 * k * damping,
    1,
  ]);
  const lowPass = productOf(order % 2 === 1 ? [...pairs, [k, 1]] : pairs);
  return highPassOf(lowPass.map((value) => value / lowPass[0]!));
}

/** Ripple of the shape of an ellipse, dB: $10\log_{10}(1 + 1/\sinh^2(n\,\mathrm{artanh}\,k))$. */
const rippleOf = (order: number, k: number): number => 10 * Math.log10(1 + 1 / Math.sinh(order * Math.atanh(k)) ** 2);

/** The k of a ripple in dB. */
const ellipseOf = (order: number, ripple: number): number =>
  Math.tanh(Math.asinh(1 / Math.sqrt(10 ** (ripple / 10) - 1)) / order);

const sources = ['zverev1967', 'small1973vented1'];

const ofDriver = (name: string, order: number, free: FreeParameter): Alignment => ({
  name,
  order,
  target: (k) => ellipse(order, k),
  parameters: {},
  free,
  sources,
});

/**
 * The Chebyshev alignment of an order: the steepest with even ripple. C4 of a vented box; the driver decides the ripple, unless it
 * is given. The level far above all corners is the low edge of the ripple where the order is even.
 *
 * $$ s_i = -k\sin\theta_i + j\cos\theta_i, \quad k = \tanh\!\left(\tfrac{1}{n}\,\mathrm{arsinh}\tfrac{1}{\varepsilon}\right), \quad
 *    \varepsilon^2 = 10^{r/10} - 1 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order |
 * | $r$ | `ripple` | dB | height of the ripple; without it the driver decides |
 * | $k$ | `k` | 1 | ratio of the axes of the ellipse of poles, 0.1 to 1; 1 is Butterworth |
 *
 * @validity orders from 2; ripple above 0
 * @neglects nothing
 * @returns the alignment
 * @source zverev1967 ch. 2
 * @source small1973vented1 C4 alignment
 * @example solveAlignment(chebyshev(4), ventedFamily, { drivers: driver, QL: 7 })
 */
export function chebyshev(order: number, { ripple }: { readonly ripple?: number } = {}): Alignment {
  if (ripple === undefined)
    return ofDriver(`C${order}`, order, { from: 0.1, to: 1, told: (k) => ({ k, ripple: rippleOf(order, k) }) });
  const denominator = ellipse(order, ellipseOf(order, ripple));
  return { name: `C${order}`, order, target: () => denominator, parameters: { ripple }, sources };
}

/**
 * The sub-Chebyshev alignment of an order, SC4 of a vented box: the poles of the Chebyshev ellipse with $k > 1$, which droops before
 * it falls. The driver decides $k$.
 *
 * @validity orders from 2; k of 1 to 12
 * @neglects nothing
 * @returns the alignment
 * @source bullock1981 sub-Chebyshev alignments
 * @example solveAlignment(subChebyshev(4), ventedFamily, { drivers: driver, QL: 7 })
 */
export const subChebyshev = (order: number): Alignment =>
  ofDriver(`SC${order}`, order, { from: 1, to: 12, told: (k) => ({ k }) });
