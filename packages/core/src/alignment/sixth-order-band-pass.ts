import { refuse } from '../fault/index.js';
import { productOf } from '../filter/product.js';
import { polynomialValue } from '../numeric/polynomial.js';
import { optional, positive, readFields } from '../quantity/index.js';
import type { Alignment } from './alignment.js';
import { denominatorOf, factorOf, fixedPoint, inPowers, rippleAlone, squaredMagnitude, zerosOf } from './with-zeros.js';

/** What a band-pass of sixth order may be asked for. */
export interface SixthOrderBandPassOptions {
  /** Height of the ripple in the band, dB; default none, maximally flat. */
  readonly ripple?: number;
}

const shape = { ripple: optional(positive('level')) };

const ORDER = 6;
/** Number of zeros at the origin of a box without losses. */
const BELOW = 4;
const plain = [0, 0, 0, 0, 1, 0, 0];
/** $(\omega^2 - 1)^6$ */
const FLAT = /* @__PURE__ */ productOf(Array.from({ length: ORDER }, () => [-1, 1]));

/** Maximally flat in the middle of the band. */
function flat(bandwidth: number, numerator: ArrayLike<number> = plain): readonly number[] {
  const passed = squaredMagnitude(numerator);
  return denominatorOf(FLAT.map((value, k) => value + bandwidth ** ORDER * passed[k]!));
}

/** Upper over lower edge, squared, of a band whose width is told as a fraction of its middle. */
const edgesOf = (bandwidth: number): number => ((bandwidth + Math.hypot(bandwidth, 2)) / 2) ** 4;

/** Of equal ripple from one edge to the other. */
function rippled(squared: number, bandwidth: number, numerator: ArrayLike<number> = plain): readonly number[] {
  const less = 1 / (edgesOf(bandwidth) - 1);
  const zeros = zerosOf(numerator);
  const origin = Array.from({ length: BELOW }, () => [-2 * less - 1, 0] as const);
  // Over u, from 0 at the lower edge to 1 at the upper one: ω² = width (u + less).
  const factorAt = (width: number) =>
    factorOf([...origin, ...zeros.map(([re, im]) => [2 * (re / width - less) - 1, (2 * im) / width] as const)]);
  const over = (h: readonly number[]): readonly number[] => inPowers(rippleAlone(ORDER, h));
  const atOrigin = (powers: readonly number[]) => polynomialValue(powers, -less);
  const top = 4 ** (ORDER - 1);
  const width = fixedPoint((at) => (top / atOrigin(over(factorAt(at)))) ** (1 / ORDER), 1 / less);
  const h = factorAt(width);
  const shifted = over(h).reduceRight<readonly number[]>(
    (sum, value) => productOf([[-less, 1 / width], sum]).map((one, k) => (k === 0 ? one + value : one)),
    [0],
  );
  // What passes vanishes at the origin. A small ripple beside it would be lost in rounding, so that each stands for itself.
  const passed = squaredMagnitude(numerator);
  const last = passed.findLast((value) => value !== 0)!;
  const share = (h[0]! * h.at(-1)! * (4 / width) ** (h.length - 1)) / (squared * last);
  const whole = shifted.slice(0, ORDER + 1).map((value, k) => value + share * passed[k]!);
  return denominatorOf(whole.map((value) => (value * width ** ORDER) / top));
}

/**
 * The band-pass alignment of sixth order, BP6: it falls with fourth order below its band and with second order above. It is
 * maximally flat, or has equal ripple between two edges.
 *
 * $$ |G|^2 = \frac{1}{1 + (\omega^2 - 1)^6 / (b^6 |N|^2)}, \quad N = s^4 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $b$ | `bandwidth` | 1 | of a narrow band, its width between the half-power edges over its middle; the driver decides it |
 * | $r$ | `ripple` | dB | height of the ripple; b is then the width between the ends of the ripple over their geometric mean |
 *
 * Losses of the box add zeros to N. The shape allows for them.
 *
 * @validity bandwidths from 0.1 to 2.5; ripple above 0 and up to 6 dB
 * @neglects nothing
 * @returns the alignment
 * @throws InputError `not-finite`, `not-positive`, `out-of-range`, `unit`, `unknown-field`
 * @source own (maximally flat and equal-ripple shapes with four zeros at the origin)
 * @example solveAlignment(sixthOrderBandPass(), parallelBandPassFamily, { drivers: driver })
 */
export function sixthOrderBandPass(options: SixthOrderBandPassOptions = {}): Alignment {
  const { ripple = 0 } = readFields('sixthOrderBandPass', options, shape);
  if (ripple > 6) {
    const expected = 'a ripple up to 6 dB';
    refuse([
      { code: 'out-of-range', path: 'sixthOrderBandPass.ripple', got: ripple, expected, remedy: 'Choose less of it.' },
    ]);
  }
  const squared = 10 ** (ripple / 10) - 1;
  return {
    name: 'BP6',
    order: ORDER,
    orderBelow: BELOW,
    withZeros: true,
    target: (bandwidth, numerator) =>
      ripple === 0 ? flat(bandwidth, numerator) : rippled(squared, bandwidth, numerator),
    parameters: { ripple },
    free: { from: 0.1, to: 2.5, told: (bandwidth) => ({ bandwidth }) },
    sources: ['own'],
  };
}
