import { refuse } from '../fault/index.js';
import { unlessWhole } from '../numeric/refusal.js';
import { anySign, decimalText, type FrequencyInput, optional, positive, readFieldsInto } from '../quantity/index.js';
import { unlessQuality } from './by-q.js';
import type { Filter } from './filter.js';

/** A low shelf. */
export interface ShelfInput {
  readonly order: 1 | 2;
  /** The frequency at which half of the gain in dB is left. */
  readonly corner: FrequencyInput;
  /** Gain far below the corner, dB; negative lowers. Far above the gain is 0 dB. */
  readonly gain: number;
  /** Quality factor of poles and zeros of order 2; default √½, the steepest that does not overshoot. */
  readonly Q?: number;
}

/** Greatest gain, dB. */
const MOST_GAIN = 40;
const shelfShape = { corner: positive('frequency'), gain: anySign('level'), Q: optional(positive('ratio')) };

/**
 * A low shelf: it lifts or lowers all that lies below its corner. What it lifts costs travel and power.
 *
 * $$ H_1(s) = \frac{s + \omega_0 A}{s + \omega_0/A}, \quad
 *    H_2(s) = \frac{s^2 + s\,\omega_0\sqrt{A}/Q + \omega_0^2 A}{s^2 + s\,\omega_0/(\sqrt{A}\,Q) + \omega_0^2/A}, \quad
 *    A = 10^{g/40} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | | `order` | 1 | 1 or 2 |
 * | $g$ | `gain` | dB | gain far below the corner |
 * | $\omega_0/2\pi$ | `corner` | Hz | where the gain is g/2 |
 * | $Q$ | `Q` | 1 | quality factor of poles and zeros, order 2 only |
 *
 * @validity gains from −40 to 40 dB; 0.05 ≤ Q ≤ 50
 * @neglects the electronics that realise it: noise, headroom, tolerances.
 * @returns the record {@link Filter}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`, `unknown-field`
 * @source w3caudioeq low shelf; for order 1 the same with one pole
 * @example shelf({ order: 2, corner: '60 Hz', gain: 6 }).name // 'Low shelf of order 2 at 60 Hz, 6 dB'
 */
export function shelf(input: ShelfInput): Filter {
  const { order, ...rest } = (input ?? {}) as ShelfInput;
  const faults = unlessWhole('shelf.order', order, 1, 2);
  const read = readFieldsInto(faults, 'shelf', rest, shelfShape);
  const asked = read?.Q;
  if (asked !== undefined) faults.push(...unlessQuality('shelf.Q', asked));
  if (asked !== undefined && order === 1) {
    const remedy = 'Remove it.';
    faults.push({ code: 'inconsistent', path: 'shelf.Q', got: asked, expected: 'no Q for order 1', remedy });
  }
  if (read && !(Math.abs(read.gain) <= MOST_GAIN)) {
    const expected = `a gain from −${MOST_GAIN} to ${MOST_GAIN} dB`;
    const remedy = 'Check the power of ten.';
    faults.push({ code: 'out-of-range', path: 'shelf.gain', got: read.gain, expected, remedy });
  }
  refuse(faults);
  const { corner, gain, Q = Math.SQRT1_2 } = read as NonNullable<typeof read>;
  const A = 10 ** (gain / 40);
  const w0 = 2 * Math.PI * corner;
  const side = (a: number): number[] => (order === 1 ? [w0 * a, 1] : [w0 ** 2 * a, (w0 * Math.sqrt(a)) / Q, 1]);
  return {
    kind: 'shelf',
    name: `Low shelf of order ${order} at ${decimalText(corner, 4)} Hz, ${decimalText(gain, 3)} dB`,
    numerator: side(A),
    denominator: side(1 / A),
  };
}
