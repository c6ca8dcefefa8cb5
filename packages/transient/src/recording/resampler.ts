import { type Fault, refuse } from '@airspring/core/fault';
import { type FrequencyInput, positive, readFields } from '@airspring/core/quantity';
import { phaseGrid, phaseWeights, REACH } from './sinc-phases.js';

/** From which sample rate to which. */
export interface ResamplingInput {
  readonly from: FrequencyInput;
  readonly to: FrequencyInput;
}

/** What a resampler keeps from block to block. */
export interface Resampling {
  /** The last samples that are still needed; those before the start are zero. */
  readonly kept: Float64Array;
  /** Samples that came in. */
  taken: number;
  /** Samples that went out. */
  given: number;
}

/** Changes the sample rate of one channel, block by block. */
export interface Resampler {
  readonly start: () => Resampling;
  /** What can be told after the next block: in the mean `to/from` times as many samples. */
  readonly run: (state: Resampling, block: Float64Array) => Float64Array;
  /** What is left when no block follows. */
  readonly end: (state: Resampling) => Float64Array;
  /** Number of samples in the result, for the number in the whole recording: `to/from` times as many, rounded up. */
  readonly length: (samples: number) => number;
}

const shape = { from: positive('frequency'), to: positive('frequency') };
const [mostUp, mostDown] = [100, 1000];

/**
 * Prepares a change of sample rate by a windowed sinc, without delay.
 *
 * $$ y_m = \sum_n x_n\,h\!\left(\frac{m f_1}{f_2} - n\right),\quad
 *    h(t) = \frac{1}{r}\,\mathrm{sinc}\frac{t}{r}\; w\!\left(\frac{t}{32 r}\right),\quad r = \max(1, f_1/f_2) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_1$ | `from` | Hz | sample rate of $x$ |
 * | $f_2$ | `to` | Hz | sample rate of $y$ |
 * | $w$ | | 1 | Kaiser window of the shape 10.06 |
 *
 * Up to 0.45 of the lower rate it changes nothing by more than 0.0001 dB, and it suppresses what lies above 0.55 by 98 dB. Between,
 * it rolls off, with half the amplitude at 0.5. Rates whose ratio is no fraction of small numbers draw straight lines between 1024
 * phases, an error of 110 dB below.
 *
 * @validity up to 100 times as many samples, or a thousandth
 * @neglects what lies before the start and after the end: zero
 * @returns a resampler
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`
 * @source kaiser1974 (window), crochiere1983 ch. 2 (change by a fraction)
 * @example const { start, run, end } = compileResampler({ from: '44.1 kHz', to: '48 kHz' });
 */
export function compileResampler(input: ResamplingInput): Resampler {
  const { from, to } = readFields('resampling', input, shape);
  refuse(ratioFaults(from, to));
  const slowing = Math.max(1, from / to);
  const half = Math.ceil(REACH * slowing);
  const { phases, step } = phaseGrid(from, to, 2 * half, slowing);
  const rows = phaseWeights(phases, half, slowing);

  const run: Resampler['run'] = (state, block) => {
    const samples = new Float64Array(state.kept.length + block.length);
    samples.set(state.kept);
    samples.set(block, state.kept.length);
    /** Number of the first of these samples. */
    const first = state.taken - state.kept.length;
    state.taken += block.length;
    // Output m stands at m · step, in phases. It needs the samples up to `half` behind the one before it.
    const ready = Math.max(state.given, Math.ceil(((state.taken - half) * phases) / step));
    const out = new Float64Array(ready - state.given);
    for (let i = 0; i < out.length; i++) {
      const at = (state.given + i) * step;
      const row = Math.floor(at);
      const n = Math.floor(row / phases);
      out[i] = between(rows, row - n * phases, at - row, samples, n - half + 1 - first);
    }
    state.given = ready;
    state.kept.set(samples.subarray(samples.length - state.kept.length));
    return out;
  };

  const length = (samples: number) => Math.ceil((samples * phases) / step);
  const end: Resampler['end'] = (state) => {
    const rest = length(state.taken) - state.given;
    return run(state, new Float64Array(half + 1)).subarray(0, rest);
  };

  const start = (): Resampling => ({ kept: new Float64Array(2 * half), taken: 0, given: 0 });
  return { start, run, end, length };
}

/** The sum over a row of weights, or over a straight line between it and the next. */
function between(
  rows: readonly Float64Array[],
  phase: number,
  part: number,
  samples: Float64Array,
  start: number,
): number {
  const row = rows[phase]!;
  let sum = 0;
  for (let i = 0; i < row.length; i++) sum += row[i]! * samples[start + i]!;
  if (part === 0) return sum;
  const next = rows[phase + 1]!;
  let other = 0;
  for (let i = 0; i < next.length; i++) other += next[i]! * samples[start + i]!;
  return sum + part * (other - sum);
}

function ratioFaults(from: number, to: number): readonly Fault[] {
  if (to <= mostUp * from && from <= mostDown * to) return [];
  const expected = `from ${from / mostDown} Hz to ${mostUp * from} Hz, for sound at ${from} Hz`;
  const remedy = 'Choose a sample rate nearer to that of the sound.';
  return [{ code: 'out-of-range', path: 'resampling.to', got: to, expected, remedy }];
}

/**
 * Sound at another sample rate, as a whole.
 *
 * @validity as `compileResampler`, which says how
 * @returns `to/from` times as many samples, rounded up
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`
 * @source kaiser1974 (window), crochiere1983 ch. 2 (change by a fraction)
 * @example resample(samples, { from: '44.1 kHz', to: '48 kHz' })
 */
export function resample(samples: Float64Array, input: ResamplingInput): Float64Array {
  const { start, run, end } = compileResampler(input);
  const state = start();
  const most = run(state, samples);
  const rest = end(state);
  const out = new Float64Array(most.length + rest.length);
  out.set(most);
  out.set(rest, most.length);
  return out;
}
