import { type FrequencyInput, readFields } from '../quantity/index.js';
import type { Filter } from './filter.js';
import { highPass, highPassShape } from './high-pass.js';

/** Order and half-power frequency of a Butterworth high-pass. */
export interface ButterworthInput {
  readonly order: 1 | 2 | 3 | 4;
  /** Frequency at which half the power passes (−3.0103 dB). */
  readonly corner: FrequencyInput;
}

/** Quality factors of the second-order sections, whose pole pairs are spaced evenly on a half circle. */
const butterworthQ = (order: number): number[] =>
  Array.from(
    { length: Math.floor(order / 2) },
    (_, i) => 1 / (2 * Math.sin((Math.PI * (2 * i + 1)) / (2 * order))),
  ).reverse();

/**
 * Butterworth high-pass, which is maximally flat above the corner and passes half the power at it.
 *
 * $$ |H(j\omega)|^2 = \frac{1}{1 + (\omega_0/\omega)^{2n}}, \quad Q_i = \frac{1}{2 \sin\frac{(2i-1)\pi}{2n}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $n$ | `order` | 1 | order, 1 to 4 |
 * | $\omega_0/2\pi$ | `corner` | Hz | half-power frequency |
 * | $Q_i$ | | 1 | quality factors of the $\lfloor n/2 \rfloor$ second-order sections |
 *
 * @validity any corner.
 * @neglects the electronics that realise it: noise, headroom, tolerances.
 * @returns the record {@link Filter}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`
 * @source zverev1967 ch. 2, |H|² = 1/(1 + ω²ⁿ)
 * @example butterworthHighPass({ order: 4, corner: '24 Hz' }).name // 'Butterworth high-pass of order 4 at 24 Hz'
 */
export function butterworthHighPass(input: ButterworthInput): Filter {
  const { order, corner } = readFields('highPass', input, highPassShape);
  return highPass('Butterworth high-pass', order, corner, butterworthQ(order));
}
