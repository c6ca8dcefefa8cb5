import { InputError, type Warning } from '@airspring/core/fault';
import type { Frequency, Time } from '@airspring/core/quantity';
import type { RecordingSource } from './source.js';

/** A recording, as its header describes it; its sound is read when it is asked for. */
export interface Recording {
  /** In words, such as `WAV, 16-bit PCM`. */
  readonly format: string;
  readonly sampleRate: Frequency;
  readonly channels: number;
  /** Samples of each channel; left out where only decoding the whole would tell. */
  readonly frames?: number;
  readonly duration?: Time;
  /** What is odd but was read all the same: an end that is missing, a rate at which no sound is recorded. */
  readonly warnings: readonly Warning[];
  /** The sound from its start, in blocks of an array for each channel. The arrays are made anew for each block. */
  readonly blocks: (options?: BlockOptions) => AsyncIterable<readonly Float64Array[]>;
}

/** How the sound is divided. */
export interface BlockOptions {
  /** Frames of a block at most; default 65,536, and fewer where there are many channels. */
  readonly length?: number | undefined;
}

/** A format of recordings. Ours and your own are used alike. */
export interface Decoder {
  readonly name: string;
  /** Whether a file that begins with these bytes is of this format. */
  readonly knows: (start: Uint8Array) => boolean;
  readonly open: (source: RecordingSource) => Promise<Recording>;
}

/** The one error, for a recording. */
export const refused = (
  code: InputError['faults'][number]['code'],
  path: 'recording' | `recording.${string}`,
  got: unknown,
  expected: string,
  remedy: string,
): InputError => new InputError([{ code, path, got, expected, remedy }]);

/** Samples of all channels in a block at most: 8 MB. */
const mostSamples = 2 ** 20;
const usualLength = 65_536;

/** Frames of a block, checked. */
export function blockLength({ length = usualLength }: BlockOptions, channels: number): number {
  if (Number.isInteger(length) && length >= 1) return Math.max(1, Math.min(length, Math.floor(mostSamples / channels)));
  throw refused('out-of-range', 'recording.length', length, 'a whole number from 1', 'Give the frames of a block.');
}

/** Rates at which sound is recorded, Hz. Others are read with a warning. */
const [slowest, fastest] = [4000, 768_000];

/** No warning, or that of a rate at which no sound is recorded. */
export const rateWarnings = (sampleRate: number): readonly Warning[] =>
  sampleRate >= slowest && sampleRate <= fastest
    ? []
    : [
        {
          code: 'outside-validity',
          path: 'recording.sampleRate',
          got: sampleRate,
          expected: `from ${slowest} Hz to ${fastest} Hz, as sound is recorded`,
        },
      ];

/** The greatest sample that counts as sound, 120 dB above full scale; its square is finite. */
const loudest = 1e6;

/** Refuses a block with a sample that is no sound. Frames are counted from the start of the recording. */
export function refuseNoise(channels: readonly Float64Array[], from: number): void {
  channels.forEach((channel, c) => {
    for (let i = 0; i < channel.length; i++) {
      const got = channel[i]!;
      if (Math.abs(got) <= loudest) continue;
      const code = Number.isFinite(got) ? 'out-of-range' : 'not-finite';
      const path = `recording.channels[${c}][${from + i}]` as const;
      throw refused(code, path, got, `at most ${loudest} times full scale`, 'The recording is damaged: make it anew.');
    }
  });
}
