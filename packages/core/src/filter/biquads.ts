import { type Fault, refuse } from '../fault/index.js';
import { type Frequency, type FrequencyInput, optional, positive, readFields } from '../quantity/index.js';
import { type Filter, normalisedFilter } from './filter.js';
import { sectionsOf } from './sections-of.js';

/**
 * A digital section of second order. With the input x and the output y of sample n it is
 *
 * `y[n] = b0 x[n] + b1 x[n−1] + b2 x[n−2] − a1 y[n−1] − a2 y[n−2]`.
 *
 * a0 is 1 and left out. The a stand with a minus sign: a stable section of low corner has a1 near −2 and a2 near 1. Programs that add
 * them take −a1 and −a2.
 */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/** Digital sections, one after the other. */
export interface DigitalFilter {
  readonly name: string;
  readonly sampleRate: Frequency;
  readonly sections: readonly Biquad[];
}

const rateShape = { sampleRate: positive('frequency'), exactAt: optional(positive('frequency')) };

/** A section in s as one in 1/z, for s = k (1 − 1/z)/(1 + 1/z). */
function digital(numerator: readonly number[], denominator: readonly number[], k: number): Biquad {
  if (denominator.length === 2) {
    const [n0 = 0, n1 = 0] = numerator;
    const [d0 = 0, d1 = 0] = denominator;
    const a0 = d0 + d1 * k;
    return { b0: (n0 + n1 * k) / a0, b1: (n0 - n1 * k) / a0, b2: 0, a1: (d0 - d1 * k) / a0, a2: 0 };
  }
  const [n0 = 0, n1 = 0, n2 = 0] = numerator;
  const [d0 = 0, d1 = 0, d2 = 0] = denominator;
  const [n, d] = [n2 * k * k, d2 * k * k];
  const a0 = d0 + d1 * k + d;
  return {
    b0: (n0 + n1 * k + n) / a0,
    b1: (2 * (n0 - n)) / a0,
    b2: (n0 - n1 * k + n) / a0,
    a1: (2 * (d0 - d)) / a0,
    a2: (d0 - d1 * k + d) / a0,
  };
}

/**
 * A filter as digital sections, by the bilinear transform. It is exact at one frequency; elsewhere the digital filter does at f what the
 * analog one does at the frequency below.
 *
 * $$ s = k\,\frac{1 - z^{-1}}{1 + z^{-1}}, \quad k = \frac{\omega_e}{\tan(\omega_e/2 f_s)}, \quad
 *    f \to \frac{k}{2\pi}\tan\frac{\pi f}{f_s} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_s$ | `sampleRate` | Hz | sample rate |
 * | $\omega_e/2\pi$ | `exactAt` | Hz | where it is exact; default the geometric mean of the frequencies of the poles, the corner of a Butterworth filter |
 * | | `sections` | 1 | `y[n] = b0 x[n] + b1 x[n−1] + b2 x[n−2] − a1 y[n−1] − a2 y[n−2]`, by rising Q |
 *
 * @validity `exactAt` below half the sample rate; `digitalDeviation` says how far the two are apart
 * @neglects rounding of the coefficients; `singlePrecision` says what it does
 * @returns one section for every two orders; one of first order has b2 = a2 = 0
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`, `unknown-field`
 * @source oppenheim1975 ch. 5, bilinear transformation
 * @example biquads(highPass(butterworthShape(2), '24 Hz'), { sampleRate: '48 kHz' }).sections[0].a1 // -1.99556
 */
export function biquads(
  filter: Filter,
  options: { readonly sampleRate: FrequencyInput; readonly exactAt?: FrequencyInput },
): DigitalFilter {
  const { sampleRate, exactAt = normalisedFilter(filter).scale / (2 * Math.PI) } = readFields(
    'digital',
    options,
    rateShape,
  );
  if (!(exactAt < sampleRate / 2)) {
    const expected = `less than half the sample rate of ${sampleRate} Hz`;
    const remedy = 'Take a higher sample rate, or a lower frequency at which it is exact.';
    const fault: Fault = { code: 'out-of-range', path: 'digital.exactAt', got: exactAt, expected, remedy };
    refuse([fault]);
  }
  const k = (2 * Math.PI * exactAt) / Math.tan((Math.PI * exactAt) / sampleRate);
  const sections = sectionsOf(filter).map(({ numerator, denominator }) => digital(numerator, denominator, k));
  return { name: filter.name, sampleRate, sections };
}
