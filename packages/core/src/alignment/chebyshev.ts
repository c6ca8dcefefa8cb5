import { type Fault, refuse } from '../fault/index.js';
import { ellipseOf, ellipsePolynomial } from '../filter/chebyshev.js';
import { highPassOf } from '../filter/product.js';
import { optional, positive, readFields } from '../quantity/index.js';
import type { Alignment, FreeParameter } from './alignment.js';
import { refuseOrder } from './refusals.js';
import {
  atLowEnd,
  denominatorOf,
  equalRipple,
  factorOf,
  fixedPoint,
  flatWithZeros,
  inPowers,
  zerosOf,
} from './with-zeros.js';

/** The ellipse of poles, turned into a high-pass. */
const ellipse = (order: number, k: number): readonly number[] => highPassOf(ellipsePolynomial(order, k));

/**
 * The same with the zeros of a box: equal ripple from a frequency upwards, or with $k > 1$ the droop in its place. The frequency
 * follows from that of the poles, whose geometric mean is 1.
 */
function ellipseWithZeros(order: number, k: number, numerator: ArrayLike<number>): readonly number[] {
  const inner = order * Math.atanh(Math.min(k, 1 / k));
  // The square of the sine of an angle that k above 1 turns by a quarter for each order.
  const squared = 1 / (k > 1 && order % 2 === 1 ? Math.cosh(inner) : Math.sinh(inner)) ** 2;
  // Where the ripple vanishes the shape is maximally flat.
  if (squared < LEAST_RIPPLE) return flatWithZeros(numerator);
  const side = k > 1 ? -1 : 1;
  const sign = side ** order;
  const zeros = zerosOf(numerator);
  const even = order % 2 === 0;
  // Over u = ±edge / ω², with x = 2 u − 1.
  const factorAt = (edge: number) =>
    factorOf(
      zeros.map(([re, im]) => [
        (2 * side * edge * re) / (re ** 2 + im ** 2) - 1,
        (-2 * side * edge * im) / (re ** 2 + im ** 2),
      ]),
    );
  const top = (h: readonly number[]) => atLowEnd(h) ** 2 * (even ? 1 + squared : 1);
  const edge = fixedPoint(
    (at) => (top(factorAt(at)) / (squared * 4 ** (order - 1))) ** (1 / order),
    ((even ? 1 + squared : 1) / (squared * 4 ** (order - 1))) ** (1 / order),
  );
  const h = factorAt(edge);
  const powers = inPowers(equalRipple(order, h, sign * squared));
  return denominatorOf(powers.map((value, i) => (value / top(h)) * (side * edge) ** i).reverse());
}

/** Ripple of the shape of an ellipse, dB: $10\log_{10}(1 + 1/\sinh^2(n\,\mathrm{artanh}\,k))$. */
const rippleOf = (order: number, k: number): number => 10 * Math.log10(1 + 1 / Math.sinh(order * Math.atanh(k)) ** 2);

/** Poles of more ripple lie so near the imaginary axis that rounding counts. */
const MOST_RIPPLE = 20;
/** A squared ripple below this is rounding beside 1. */
const LEAST_RIPPLE = 1e-14;
const rippleShape = { ripple: optional(positive('level')) };
const sources = ['zverev1967', 'small1973vented1'];

const ofDriver = (name: string, order: number, free: FreeParameter): Alignment => ({
  name,
  order,
  withZeros: true,
  target: (k, numerator) => (numerator ? ellipseWithZeros(order, k, numerator) : ellipse(order, k)),
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
 * @validity orders from 2 to 10; ripple above 0 and up to 20 dB
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `not-finite`, `not-positive`, `out-of-range`, `unit`, `unknown-field`
 * @source zverev1967 ch. 2
 * @source small1973vented1 C4 alignment
 * @example solveAlignment(chebyshev(4), ventedFamily, { drivers: driver, QL: 7 })
 */
export function chebyshev(order: number, options: { readonly ripple?: number } = {}): Alignment {
  refuseOrder(order);
  const { ripple } = readFields('chebyshev', options, rippleShape);
  if (ripple === undefined)
    return ofDriver(`C${order}`, order, { from: 0.1, to: 1, told: (k) => ({ k, ripple: rippleOf(order, k) }) });
  if (ripple > MOST_RIPPLE) {
    const expected = `at most ${MOST_RIPPLE} dB`;
    const remedy = 'Check the power of ten.';
    const fault: Fault = { code: 'out-of-range', path: 'chebyshev.ripple', got: ripple, expected, remedy };
    refuse([fault]);
  }
  const k = ellipseOf(order, ripple);
  const denominator = ellipse(order, k);
  return {
    name: `C${order}`,
    order,
    withZeros: true,
    target: (_, numerator) => (numerator ? ellipseWithZeros(order, k, numerator) : denominator),
    parameters: { ripple },
    sources,
  };
}

/**
 * The sub-Chebyshev alignment of an order, SC4 of a vented box: the poles of the Chebyshev ellipse with $k > 1$, which droops before
 * it falls. The driver decides $k$.
 *
 * @validity orders from 2 to 10; k of 1 to 12
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `not-finite`, `out-of-range`
 * @source bullock1981 sub-Chebyshev alignments
 * @example solveAlignment(subChebyshev(4), ventedFamily, { drivers: driver, QL: 7 })
 */
export function subChebyshev(order: number): Alignment {
  refuseOrder(order);
  return ofDriver(`SC${order}`, order, { from: 1, to: 12, told: (k) => ({ k }) });
}
