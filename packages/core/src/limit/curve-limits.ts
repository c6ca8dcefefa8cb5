import { refuse } from '../fault/index.js';
import { polynomialRoots } from '../numeric/index.js';
import { type DisplacementPeakInput, notNegative, positive, type RatioInput, readFields } from '../quantity/index.js';
import type { Limit } from './limit.js';
import { type TravelCurve, travelCurveShape } from './travel-curve.js';

/** The smallest displacement, of either sign, at which a curve reaches a multiple of its value at rest. */
function reached(curve: TravelCurve, multiple: number): number | undefined {
  const { coefficients, upTo } = readFields('curve', curve, travelCurveShape);
  const [atRest = 0, ...rest] = coefficients;
  // In parts of upTo, so that the powers compare.
  const scaled = [atRest * (1 - multiple), ...rest.map((one, k) => one * upTo ** (k + 1))];
  if (scaled.slice(1).every((one) => one === 0)) return undefined;
  const { re, im } = polynomialRoots(scaled);
  const sizes = Array.from(re, (x, k) => (Math.abs(im[k]!) <= 1e-7 * Math.abs(x) ? Math.abs(x) : Infinity));
  const least = Math.min(...sizes);
  return least <= 1 ? least * upTo : undefined;
}

function limitAt(travel: number | undefined, name: string, basis: string): readonly Limit[] {
  if (travel === undefined) return [];
  return [{ name, probe: 'coneVelocity', integrated: true, greatestRms: travel / Math.SQRT2, basis }];
}

const shareOf = (share: RatioInput | undefined, usual: number): number => {
  const read = readFields('options', { share: share ?? usual }, { share: positive('ratio') }).share;
  const expected = 'a share below 1';
  const remedy = 'Give what is left of the value at rest, such as 0.82.';
  if (read >= 1) refuse([{ code: 'out-of-range', path: 'options.share', got: share, expected, remedy }]);
  return read;
};

/**
 * Travel at which the force factor has fallen to a share of its value at rest, in whichever direction it falls first.
 *
 * $$ Bl(\pm x) = 0.82\,Bl(0),\qquad Bl(x) = \sum_k b_k x^k $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $b_k$ | `coefficients` | T·m/mᵏ | curve of the force factor |
 * | $x$ | | m | displacement of the cone |
 *
 * @validity the range in which the curve was measured; no limit where the share is not reached in it. That 82 % go with about 10 % of
 *   intermodulation is recalled, not read
 * @neglects a cone that does not rest at 0, and that Bl and stiffness act together
 * @returns one limit, or none
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source iec62458 displacement limits: 82 % of Bl for 10 % distortion (from memory)
 * @example motorTravelLimit({ coefficients: [13.5, 0, -4e4], upTo: '12 mm' }) // 7.8 mm, peak
 */
export function motorTravelLimit(Bl: TravelCurve, options: { readonly share?: RatioInput } = {}): readonly Limit[] {
  const share = shareOf(options.share, 0.82);
  return limitAt(reached(Bl, share), 'travel by Bl', `Bl at least ${share} of its value at rest`);
}

/**
 * Travel at which the compliance of the suspension has fallen to a share of its value at rest, in whichever direction it falls first.
 *
 * $$ K(\pm x) = K(0)/0.75,\qquad K(x) = \sum_k k_k x^k $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $k_k$ | `coefficients` | N/m per mᵏ | curve of the stiffness |
 * | $x$ | | m | displacement of the cone |
 *
 * @validity the range in which the curve was measured; no limit where the share is not reached in it. That 75 % go with about 10 % of
 *   harmonic distortion is recalled, not read; in a small closed box the air is the greater spring, and the limit is on the safe side
 * @neglects a cone that does not rest at 0, and that Bl and stiffness act together
 * @returns one limit, or none
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source iec62458 displacement limits: 75 % of the compliance for 10 % distortion (from memory)
 * @example suspensionTravelLimit({ coefficients: [1600, 0, 8e6], upTo: '12 mm' }) // 8.2 mm, peak
 */
export function suspensionTravelLimit(
  stiffness: TravelCurve,
  options: { readonly share?: RatioInput } = {},
): readonly Limit[] {
  const share = shareOf(options.share, 0.75);
  return limitAt(reached(stiffness, 1 / share), 'travel by stiffness', `compliance at least ${share} of that at rest`);
}

/**
 * Travel at which the driver is damaged, less a margin: a stated share of the mechanical limit.
 *
 * $$ \hat x \le (1 - m)\,X_{mech} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $X_{mech}$ | `Xmech` | m | travel at which coil or suspension hits something, one way |
 * | $m$ | `margin` | 1 | what is kept free of it; default 0.2 |
 *
 * @validity an Xmech that the maker states or that was measured without force
 * @neglects a cone that does not rest at 0, and short peaks above a steady sine
 * @returns one limit
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source common practice
 * @example damageLimit({ Xmech: '18 mm' }).greatestRms // 14.4 mm over √2
 */
export function damageLimit(options: { readonly Xmech: DisplacementPeakInput; readonly margin?: RatioInput }): Limit {
  const { margin, Xmech } = readFields(
    'options',
    { margin: 0.2, ...options },
    {
      Xmech: positive('displacementPeak'),
      margin: notNegative('ratio'),
    },
  );
  const remedy = 'Give the share of Xmech that is kept free, such as 0.2.';
  if (margin >= 1)
    refuse([{ code: 'out-of-range', path: 'options.margin', got: margin, expected: 'a margin below 1', remedy }]);
  const greatestRms = ((1 - margin) * Xmech) / Math.SQRT2;
  const basis = `Xmech less a margin of ${margin} of it`;
  return { name: 'damage', probe: 'coneVelocity', integrated: true, greatestRms, basis };
}
