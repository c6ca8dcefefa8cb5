import { polynomialProduct, polynomialSum } from '../numeric/index.js';
import { denominatorOfMagnitude } from './from-magnitude.js';
import { type FilterShape, refuseShapeOrder } from './shape.js';

const times = (list: ArrayLike<number>, factor: number): Float64Array =>
  Float64Array.from(list, (value) => value * factor);

/** Legendre polynomials $P_0 \ldots P_m$, ascending, by their recurrence. */
function legendrePolynomials(most: number): readonly ArrayLike<number>[] {
  const list: ArrayLike<number>[] = [[1], [0, 1]];
  for (let k = 1; k < most; k++) {
    const rising = times(polynomialProduct([0, 1], list[k]!), (2 * k + 1) / (k + 1));
    list.push(polynomialSum(rising, times(list[k - 1]!, -k / (k + 1))));
  }
  return list;
}

/** $L_n(\omega^2)$ in ascending powers of $\omega^2$: the steepest monotonic polynomial from 0 at 0 to 1 at 1. */
function steepest(order: number): readonly number[] {
  const half = Math.floor((order - 1) / 2);
  const all = legendrePolynomials(half);
  const isOdd = order % 2 === 1;
  // For even orders only every other polynomial counts, those of the parity of `half`.
  const terms = all.flatMap((polynomial, k) =>
    k > half || (!isOdd && (half - k) % 2 === 1) ? [] : [times(polynomial, 2 * k + 1)],
  );
  const sum = terms.reduce<ArrayLike<number>>(polynomialSum, [0]);
  const square = polynomialProduct(sum, sum);
  const slope = isOdd ? square : polynomialProduct([1, 1], square);
  const inside = Array.from(slope, (value, k) => value / (k + 1));
  // The integral from −1 to 2x − 1, x = ω².
  const shifted = inside.reduceRight<ArrayLike<number>>(
    (done, value) => polynomialSum(polynomialProduct(done, [-1, 2]), [value]),
    [],
  );
  const whole = polynomialProduct(shifted, [-1, 2]);
  const atZero = whole[0]!;
  const atOne = whole.reduce((total, value) => total + value, 0) - atZero;
  return Array.from(whole, (value, k) => (k === 0 ? 0 : value / atOne));
}

/** The denominator of the low-pass $1/D$ with $|D|^2 = 1 + L_n(\omega^2)$. */
export function legendreDenominator(order: number): readonly number[] {
  const [, ...rising] = steepest(order);
  return denominatorOfMagnitude([1, ...rising]);
}

/**
 * The Legendre shape of an order, of Papoulis: the steepest one that falls without ripple. Half the power passes at the corner.
 *
 * $$ |D(j\omega)|^2 = 1 + L_n(\omega^2) $$
 *
 * $L_n$ is the integral of a sum of Legendre polynomials, squared: of all monotonic polynomials with $L_n(1) = 1$ it has the
 * greatest slope at 1.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order, 2 to 8 |
 *
 * @validity orders from 2 to 8
 * @neglects nothing
 * @returns the record {@link FilterShape}
 * @throws InputError `not-finite`, `out-of-range`
 * @source papoulis1958 L_n from Legendre polynomials
 * @example highPass(legendreShape(4), '24 Hz')
 */
export function legendreShape(order: number): FilterShape {
  refuseShapeOrder(order, 2);
  return { name: 'Legendre', denominator: legendreDenominator(order), sources: ['papoulis1958'] };
}
