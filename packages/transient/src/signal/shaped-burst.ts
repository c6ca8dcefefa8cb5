import { type FrequencyInput, optional, positive, type RatioInput, readFields } from '@airspring/core/quantity';
import { refuseAbove, type Signal } from './signal.js';

/** A short tone that swells and dies away. */
export interface ShapedBurstInput {
  readonly frequency: FrequencyInput;
  /** Length in cycles of the tone; default {@link burstCycles}. A quarter above a whole or half number has its peak in the middle. */
  readonly cycles?: RatioInput | undefined;
}

/** Cycles of the burst with which the greatest output of low-frequency loudspeakers is commonly measured. */
export const burstCycles = 6.5;

const shape = { frequency: positive('frequency'), cycles: optional(positive('ratio')) };

/**
 * A tone burst under a Hann window, in the manner of the bursts of CTA-2010. It is zero before and after.
 *
 * $$ x(t) = \tfrac12\left(1 - \cos\frac{2\pi f t}{N}\right)\sin(2\pi f t),\quad 0 \le t \le N/f $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f$ | `frequency` | Hz | frequency of the tone |
 * | $N$ | `cycles` | 1 | its length in cycles |
 *
 * With 6.5 cycles the peak is 1, the rms over the burst 0.4330, the crest factor 7.27 dB, and the level falls by 3 dB at 0.889 and
 * 1.111 times the frequency. The standard itself was not read. The article that prints the window also prints a crest factor of
 * 5.14 dB, which does not follow from it: a Hann window alone adds 4.26 dB to the 3.01 dB of a sine.
 *
 * @validity frequencies below half the sample rate; the spectrum of a burst reaches well beyond its frequency
 * @neglects nothing
 * @returns a signal
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`; `out-of-range` too when it is
 *   compiled for a sample rate that is too low
 * @source ponteggia2013 definition of the test signal
 * @example shapedBurst({ frequency: '31.5 Hz' }).compile(48_000)(0, new Float64Array(9905))
 */
export function shapedBurst(input: ShapedBurstInput): Signal {
  const { frequency, cycles = burstCycles } = readFields('shapedBurst', input, shape);
  const compile = (sampleRate: number) => {
    refuseAbove('shapedBurst.frequency', frequency, sampleRate);
    return (from: number, out: Float64Array) => {
      for (let i = 0; i < out.length; i++) {
        const turns = (frequency * (from + i)) / sampleRate;
        const inside = turns > 0 && turns < cycles;
        out[i] = inside ? Math.sin((Math.PI * turns) / cycles) ** 2 * Math.sin(2 * Math.PI * turns) : 0;
      }
    };
  };
  return { name: `burst of ${cycles} cycles at ${frequency} Hz`, sources: ['ponteggia2013'], compile };
}
