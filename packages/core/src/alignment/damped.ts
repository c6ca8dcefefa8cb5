import { refuse } from '../fault/index.js';
import { productOf } from '../filter/product.js';
import { unlessPositive } from '../numeric/refusal.js';
import type { Alignment } from './alignment.js';
import { refuseOrder } from './refusals.js';

/**
 * The second-order alignment of a total quality factor, for a closed box.
 *
 * $$ G(s) = \frac{s^2}{s^2 + s/Q_{tc} + 1} $$
 *
 * @validity any positive Qtc
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `not-finite`, `not-positive`
 * @source small1972closed1 response function
 * @example solveAlignment(ofTotalQ(0.8), closedFamily, { drivers: driver })
 */
export function ofTotalQ(Qtc: number): Alignment {
  refuse(unlessPositive('Qtc', Qtc));
  const target = () => [1, 1 / Qtc, 1];
  return { name: `Qtc ${Qtc}`, order: 2, target, parameters: { Qtc }, sources: ['small1972closed1'] };
}

/**
 * The critically damped alignment of an order: all poles in one place on the real axis. Of a closed box it has Qtc = ½.
 *
 * $$ G(s) = \left(\frac{s}{s + 1}\right)^n $$
 *
 * @validity orders from 2 to 10
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `not-finite`, `out-of-range`
 * @source small1972closed1 response function with Qtc = 0.5
 * @example solveAlignment(criticallyDamped(2), closedFamily, { drivers: driver })
 */
export function criticallyDamped(order: number): Alignment {
  refuseOrder(order);
  const denominator = productOf(Array.from({ length: order }, () => [1, 1]));
  return { name: `CD${order}`, order, target: () => denominator, parameters: {}, sources: ['small1972closed1'] };
}
