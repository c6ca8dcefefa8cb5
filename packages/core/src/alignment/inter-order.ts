import { refuse } from '../fault/index.js';
import { denominatorOfMagnitude } from '../filter/from-magnitude.js';
import type { Alignment } from './alignment.js';

/**
 * The inter-order Butterworth alignment IB4, of order 3½: between the third and the fourth order at the half-power frequency.
 *
 * $$ |G(j\omega)|^2 = \frac{\omega^8}{\omega^8 + w\,\omega^2 + (1 - w)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $w$ | `share` | 1 | share of the third order; 0 is B4, ½ is order 3½ |
 *
 * @validity shares from 0 to below 1
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `out-of-range`
 * @source audioxpress2024ib4 order between three and four; equal shares are our reading
 * @example solveAlignment(interOrder(0.5), ventedFamily, { drivers: driver }, { addResistance: true })
 */
export function interOrder(share = 0.5): Alignment {
  if (!(Number.isFinite(share) && share >= 0 && share < 1)) {
    const expected = 'a share from 0 to below 1';
    refuse([{ code: 'out-of-range', path: 'share', got: share, expected, remedy: 'Leave it out for order 3½.' }]);
  }
  const denominator = denominatorOfMagnitude([1 - share, share, 0, 0, 1]);
  return { name: 'IB4', order: 4, target: () => denominator, parameters: { share }, sources: ['audioxpress2024ib4'] };
}
