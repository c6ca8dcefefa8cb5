import type { Fault } from '@airspring/core/fault';
import { refuse } from '@airspring/core/fault';
import { type FrequencyInput, positive, readFields, type TimeInput } from '@airspring/core/quantity';
import { refuseAbove, type Signal } from './signal.js';

/** A tone whose frequency moves from one end to the other, an octave in equal times. */
export interface SweepInput {
  readonly from: FrequencyInput;
  /** Above or below `from`. */
  readonly to: FrequencyInput;
  readonly duration: TimeInput;
}

const shape = { from: positive('frequency'), to: positive('frequency'), duration: positive('time') };

/**
 * A logarithmic sweep of peak 1. It is zero before and after.
 *
 * $$ x(t) = \sin\left(2\pi f_1 L\,(e^{t/L} - 1)\right),\quad L = \frac{T}{\ln(f_2/f_1)},\quad 0 \le t \le T $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_1$ | `from` | Hz | frequency at the start |
 * | $f_2$ | `to` | Hz | frequency at the end |
 * | $T$ | `duration` | s | duration |
 *
 * The frequency at the time $t$ is $f_1 e^{t/L}$. The phase is exact: it is no sum over samples.
 *
 * @validity both frequencies below half the sample rate
 * @neglects nothing; the sweep begins and ends abruptly
 * @returns a signal
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`, `inconsistent` for equal
 *   frequencies; `out-of-range` too when it is compiled for a sample rate that is too low
 * @source farina2000 eq. of the logarithmic sweep
 * @example sweep({ from: '10 Hz', to: '200 Hz', duration: '20 s' }).compile(48_000)(0, new Float64Array(960_000))
 */
export function sweep(input: SweepInput): Signal {
  const { from: start, to: end, duration } = readFields('sweep', input, shape);
  refuse(equalEnds(start, end));
  const length = duration / Math.log(end / start);
  const compile = (sampleRate: number) => {
    refuseAbove('sweep.from', start, sampleRate);
    refuseAbove('sweep.to', end, sampleRate);
    return (from: number, out: Float64Array) => {
      for (let i = 0; i < out.length; i++) {
        const time = (from + i) / sampleRate;
        const turns = start * length * Math.expm1(time / length);
        out[i] = time >= 0 && time <= duration ? Math.sin(2 * Math.PI * (turns - Math.floor(turns))) : 0;
      }
    };
  };
  return { name: `sweep from ${start} Hz to ${end} Hz`, sources: ['farina2000'], compile };
}

const equalEnds = (start: number, end: number): readonly Fault[] =>
  // Of nearly equal ends the logarithm keeps too few digits.
  Math.abs(Math.log(end / start)) >= 1e-6
    ? []
    : [
        {
          code: 'inconsistent',
          path: 'sweep.to',
          got: end,
          expected: `a frequency other than ${start} Hz`,
          remedy: 'Use a sine for one frequency.',
        },
      ];
