import { type FrequencyInput, positive, readFields } from '@airspring/core/quantity';
import { refuseAbove, type Signal } from './signal.js';

/** A steady tone. */
export interface SineInput {
  readonly frequency: FrequencyInput;
}

const shape = { frequency: positive('frequency') };

/**
 * A sine of peak 1, which begins at zero.
 *
 * $$ x_n = \sin(2\pi f n / f_s) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f$ | `frequency` | Hz | frequency |
 * | $f_s$ | `sampleRate` | Hz | sample rate |
 * | $n$ | | 1 | number of the sample |
 *
 * @validity frequencies below half the sample rate. The phase is off by at most 10⁻¹⁵ of the turns since sample 0.
 * @neglects nothing
 * @returns a signal
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`; `out-of-range` too when it is
 *   compiled for a sample rate that is too low
 * @source oppenheim1997 §1.3 (definition)
 * @example sine({ frequency: '30 Hz' }).compile(48_000)(0, new Float64Array(1024))
 */
export function sine(input: SineInput): Signal {
  const { frequency } = readFields('sine', input, shape);
  const compile = (sampleRate: number) => {
    refuseAbove('sine.frequency', frequency, sampleRate);
    return (from: number, out: Float64Array) => {
      for (let i = 0; i < out.length; i++) {
        const turns = (frequency * (from + i)) / sampleRate;
        out[i] = Math.sin(2 * Math.PI * (turns - Math.floor(turns)));
      }
    };
  };
  return { name: `sine of ${frequency} Hz`, sources: ['oppenheim1997'], compile };
}
