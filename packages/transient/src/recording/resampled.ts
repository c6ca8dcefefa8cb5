import { type FrequencyInput, read, si } from '@airspring/core/quantity';
import { type BlockOptions, blockLength, type Recording } from './recording.js';
import { compileResampler, type Resampler } from './resampler.js';

/**
 * A recording at another sample rate, such as that of a simulation. Its blocks are changed while they are read.
 *
 * @validity as `compileResampler`, which says how
 * @returns the recording; the very same where the rate is the same
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source kaiser1974 (window), crochiere1983 ch. 2 (change by a fraction)
 * @example resampled(await recordingFrom(source), '48 kHz')
 */
export function resampled(recording: Recording, sampleRate: FrequencyInput): Recording {
  const rate = read('frequency', sampleRate, 'sampleRate');
  if (rate === recording.sampleRate) return recording;
  const resampler = compileResampler({ from: recording.sampleRate, to: rate });
  const frames = recording.frames === undefined ? undefined : resampler.length(recording.frames);
  return {
    ...recording,
    sampleRate: rate,
    ...(frames === undefined ? {} : { frames, duration: si('time', frames / rate) }),
    blocks: (options = {}) => changed(recording, resampler, options),
  };
}

async function* changed(recording: Recording, { start, run, end }: Resampler, options: BlockOptions) {
  const length = blockLength(options, recording.channels);
  const states = Array.from({ length: recording.channels }, start);
  for await (const block of recording.blocks(options)) {
    yield* pieces(
      block.map((samples, c) => run(states[c]!, samples)),
      length,
    );
  }
  yield* pieces(states.map(end), length);
}

/** A block, divided where it is longer than asked for. */
function* pieces(block: readonly Float64Array[], length: number) {
  const frames = block[0]!.length;
  for (let from = 0; from < frames; from += length) yield block.map((samples) => samples.slice(from, from + length));
}
