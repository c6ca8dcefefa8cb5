import { type Impossible, impossible, type Warning } from '../fault/index.js';
import { type Frequency, kinds, si } from '../quantity/index.js';
import type { Biquad, DigitalFilter } from './biquads.js';
import { compileBiquads, isStable } from './compile-biquads.js';
import { type DigitalDeviation, deviationOf } from './digital-deviation.js';

/** The poles of a digital section, told as the analog section that the bilinear transform makes it of. */
export interface DigitalPoles {
  readonly f0: Frequency;
  /** A section of first order has none. */
  readonly Q?: number;
}

/** What 32-bit coefficients make of a digital filter. */
export interface SinglePrecision {
  readonly ok: true;
  /** The filter with coefficients that 32 bits can hold. */
  readonly rounded: DigitalFilter;
  /** The poles of each section as they should be, and as they are. */
  readonly poles: readonly { readonly exact: DigitalPoles; readonly rounded: DigitalPoles }[];
  /** How far its response is from that of the exact coefficients, from a tenth of the lowest pole to 0.49 of the sample rate. */
  readonly deviation: DigitalDeviation;
  /**
   * How much a section amplifies the rounding of its own output, dB: the greatest of all sections. With 32-bit samples that rounding
   * lies some 150 dB below the output.
   */
  readonly noiseGain: number;
  readonly warnings: readonly Warning[];
}

/** Greatest deviation of level that passes without a warning, dB. */
const AUDIBLE = 0.1;
/** Greatest noise gain that passes without a warning, dB: it leaves some 90 dB. */
const NOISY = 60;

const rounded = ({ b0, b1, b2, a1, a2 }: Biquad): Biquad => ({
  b0: Math.fround(b0),
  b1: Math.fround(b1),
  b2: Math.fround(b2),
  a1: Math.fround(a1),
  a2: Math.fround(a2),
});

function polesOf({ a1, a2, b2 }: Biquad, sampleRate: number): DigitalPoles {
  const [low, high] = [1 + a1 + a2, 1 - a1 + a2];
  const at = (tangent: number) => si('frequency', (Math.atan(tangent) * sampleRate) / Math.PI);
  if (a2 === 0 && b2 === 0) return { f0: at(low / high) };
  return { f0: at(Math.sqrt(low / high)), Q: Math.sqrt(low * high) / (2 * (1 - a2)) };
}

/** Power of the response of 1/A to one sample. */
const noiseOf = ({ a1, a2 }: Biquad): number => (1 + a2) / ((1 - a2) * (1 + a2 + a1) * (1 + a2 - a1));

/**
 * What becomes of a digital filter whose coefficients are held in 32 bits (24 of them digits), computed in the direct form. A low corner
 * at a high sample rate puts the poles so near to 1 that their place is rounded too: f0 moves, and rounding of the samples is amplified.
 *
 * $$ \tan^2\frac{\pi f_0}{f_s} = \frac{1 + a_1 + a_2}{1 - a_1 + a_2}, \quad
 *    Q = \frac{\sqrt{(1 + a_1 + a_2)(1 - a_1 + a_2)}}{2(1 - a_2)}, \quad
 *    G = \frac{1 + a_2}{(1 - a_2)\bigl((1 + a_2)^2 - a_1^2\bigr)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a_1$, $a_2$ | `digital` | 1 | coefficients of a section |
 * | $f_s$ | `digital` | Hz | sample rate |
 * | $f_0$, $Q$ | `poles` | Hz, 1 | frequency and quality factor of its poles |
 * | $10\log_{10} G$ | `noiseGain` | dB | power gain from the rounding of the output to the output |
 *
 * A form that keeps its state in integrators, or 64-bit coefficients, has none of this.
 *
 * @validity stable sections
 * @neglects what later sections do to the noise of the earlier ones
 * @returns the rounded filter, its poles, its deviation, its noise gain, and warnings above 0.1 dB of deviation or 60 dB of noise gain
 * @throws InputError `not-finite`, `not-positive`, `inconsistent`
 * @source oppenheim1975 ch. 9, effects of finite register length
 * @example singlePrecision(biquads(highPass(butterworthShape(2), '24 Hz'), { sampleRate: '48 kHz' })) // poles at 23.97 Hz in place of 24 Hz
 */
export function singlePrecision(digital: DigitalFilter): SinglePrecision | Impossible {
  const exactly = compileBiquads(digital);
  const { name, sampleRate } = digital;
  const sections = digital.sections.map(rounded);
  if (!sections.every(isStable)) {
    const text =
      'with 32-bit coefficients a section does not die away: take 64 bits, a lower sample rate, or a higher corner';
    return impossible('unstable-in-single-precision', text);
  }
  const less = { name, sampleRate, sections };
  const poles = sections.map((section, i) => ({
    exact: polesOf(digital.sections[i]!, sampleRate),
    rounded: polesOf(section, sampleRate),
  }));
  const lowest = Math.min(...poles.map(({ exact }) => exact.f0));
  const from = Math.max(lowest / 10, kinds.frequency.range[0]);
  const deviation = deviationOf(exactly, compileBiquads(less), from, 0.49 * sampleRate);
  const noiseGain = 10 * Math.log10(Math.max(...digital.sections.map(noiseOf)));
  const warnings: Warning[] = [];
  const warn = (path: string, got: number, most: number) =>
    warnings.push({ code: 'outside-validity', path, got, expected: `at most ${most} dB: take 64-bit coefficients` });
  if (Math.abs(deviation.level) > AUDIBLE) warn('deviation.level', deviation.level, AUDIBLE);
  if (noiseGain > NOISY) warn('noiseGain', noiseGain, NOISY);
  return { ok: true, rounded: less, poles, deviation, noiseGain, warnings };
}
