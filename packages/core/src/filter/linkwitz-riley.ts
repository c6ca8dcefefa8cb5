import { type Fault, refuse } from '../fault/index.js';
import { butterworthPolynomial } from './butterworth.js';
import { productOf } from './product.js';
import type { FilterShape } from './shape.js';

/**
 * The Linkwitz–Riley shape of an order: two Butterworth filters of half the order in turn. A quarter of the power passes at the corner
 * (−6.02 dB). The sum of low-pass and high-pass has the same level at every frequency; for orders 2 and 6 one of them is turned over.
 *
 * $$ D(s) = B_{n/2}(s)^2, \quad |D(j\omega)| = 1 + \omega^n $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order: 2, 4, 6 or 8 |
 * | $B_m$ | | 1 | Butterworth polynomial of order $m$ |
 *
 * @validity orders 2, 4, 6 and 8
 * @neglects nothing
 * @returns the record {@link FilterShape}
 * @throws InputError `not-finite`, `out-of-range`
 * @source audioxpress2024lr4 two equal Butterworth filters in a row
 * @example lowPass(linkwitzRileyShape(4), '80 Hz')
 */
export function linkwitzRileyShape(order: number): FilterShape {
  if (![2, 4, 6, 8].includes(order)) {
    const code = Number.isFinite(order) ? 'out-of-range' : 'not-finite';
    const fault: Fault = { code, path: 'order', got: order, expected: '2, 4, 6 or 8', remedy: 'Choose one of them.' };
    refuse([fault]);
  }
  const half = butterworthPolynomial(order / 2);
  return { name: 'Linkwitz–Riley', denominator: productOf([half, half]), sources: ['audioxpress2024lr4'] };
}
