import { productOf } from '../filter/product.js';
import type { Alignment } from './alignment.js';

/** Two equal sections of a quality factor. */
const twice = (Q: number): readonly number[] => productOf([1, 2].map(() => [1, 1 / Q, 1]));

const family = (name: string, from: number, to: number): Alignment => ({
  name,
  order: 4,
  target: twice,
  parameters: {},
  free: { from, to, told: (Q) => ({ Q }) },
  sources: ['audioxpress2024lr4'],
});

/** Quality factor of a section that is maximally flat. */
const FLAT = Math.SQRT1_2;

/**
 * The boom-box alignment BB4: two equal second-order sections, for which the box is tuned to the resonance of the driver. The
 * driver decides their quality factor, which is high: the response peaks.
 *
 * $$ G(s) = \left(\frac{s^2}{s^2 + s/Q + 1}\right)^2 $$
 *
 * @validity Q of 0.707 to 1.5
 * @neglects nothing
 * @returns the alignment
 * @source audioxpress2024lr4 two equal filters in a row
 * @example solveAlignment(boomBox, ventedFamily, { drivers: driver, QL: 7 })
 */
export const boomBox: Alignment = /* @__PURE__ */ family('BB4', FLAT, 1.5);

/**
 * The super boom-box alignment SBB4: the same sections with a quality factor below 0.707, for drivers of low total quality factor.
 * The response droops and does not peak.
 *
 * @validity Q of 0.15 to 0.707
 * @neglects nothing
 * @returns the alignment
 * @source audioxpress2024lr4 two equal filters in a row
 * @example solveAlignment(superBoomBox, ventedFamily, { drivers: driver, QL: 7 })
 */
export const superBoomBox: Alignment = /* @__PURE__ */ family('SBB4', 0.15, FLAT);

/**
 * The Linkwitz–Riley alignment LR4: two Butterworth sections in a row, where the two boom-box alignments meet.
 *
 * @validity fourth-order boxes
 * @neglects nothing
 * @returns the alignment
 * @source audioxpress2024lr4 two equal Butterworth filters in a row
 * @example solveAlignment(linkwitzRiley, ventedFamily, { drivers: driver, QL: 7 }, { addResistance: true })
 */
export const linkwitzRiley: Alignment = {
  name: 'LR4',
  order: 4,
  target: () => twice(FLAT),
  parameters: {},
  sources: ['audioxpress2024lr4'],
};
