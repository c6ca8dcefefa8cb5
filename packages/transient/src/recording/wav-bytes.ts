import { type Fault, refuse } from '@airspring/core/fault';
import { type FrequencyInput, read } from '@airspring/core/quantity';
import { pcm16, type SampleFormat } from './sample-format.js';

/** Sound to be written. */
export interface WavInput {
  /** A whole number of Hz. */
  readonly sampleRate: FrequencyInput;
  /** An array for each channel, all of one length. */
  readonly channels: readonly ArrayLike<number>[];
  /** Default {@link pcm16}. */
  readonly format?: SampleFormat | undefined;
}

/**
 * A WAV file of sound that is in memory, as for tests, demonstrations and downloads.
 *
 * Whole numbers are rounded to the nearest and cut off at full scale, which is 1.
 *
 * @validity finite samples; less than 4 GB
 * @neglects dither
 * @returns the bytes of the file
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `inconsistent`
 * @source ibm1991 (RIFF and WAVE)
 * @example wavBytes({ sampleRate: '48 kHz', channels: [left, right], format: float32 })
 */
export function wavBytes({ sampleRate, channels, format = pcm16 }: WavInput): Uint8Array<ArrayBuffer> {
  const rate = read('frequency', sampleRate, 'wav.sampleRate');
  const frames = channels[0]?.length ?? 0;
  const frameBytes = channels.length * format.bytes;
  refuse([...rateFaults(rate), ...channelFaults(channels, frames, frameBytes)]);
  const bytes = new Uint8Array(44 + frames * frameBytes + ((frames * frameBytes) % 2));
  const view = new DataView(bytes.buffer);
  const name = (at: number, text: string) =>
    bytes.set(
      [...text].map((letter) => letter.charCodeAt(0)),
      at,
    );
  name(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  name(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, format.tag, true);
  view.setUint16(22, channels.length, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * frameBytes, true);
  view.setUint16(32, frameBytes, true);
  view.setUint16(34, 8 * format.bytes, true);
  name(36, 'data');
  view.setUint32(40, frames * frameBytes, true);
  channels.forEach((channel, c) => {
    for (let i = 0, at = 44 + c * format.bytes; i < frames; i++, at += frameBytes) format.write(view, at, channel[i]!);
  });
  return bytes;
}

const rateFaults = (rate: number): readonly Fault[] =>
  Number.isInteger(rate)
    ? []
    : [
        {
          code: 'out-of-range',
          path: 'wav.sampleRate',
          got: rate,
          expected: 'a whole number of Hz',
          remedy: 'Round it, or resample the sound.',
        },
      ];

function channelFaults(channels: WavInput['channels'], frames: number, frameBytes: number): readonly Fault[] {
  const path = 'wav.channels';
  if (frames === 0) {
    return [{ code: 'empty', path, got: channels, expected: 'at least one sample', remedy: 'Give the sound.' }];
  }
  if (channels.some(({ length }) => length !== frames)) {
    const got = channels
      .map(({ length }) => length)
      .slice(0, 8)
      .join(', ');
    return [{ code: 'inconsistent', path, got, expected: 'channels of one length', remedy: 'Fill the shorter ones.' }];
  }
  if (channels.length > 65_535 || frameBytes > 65_535 || frames * frameBytes > 2 ** 32 - 64) {
    const expected = 'frames of at most 65,535 bytes, and less than 4 GB';
    return [{ code: 'out-of-range', path, got: `${frames} frames`, expected, remedy: 'Write several files.' }];
  }
  return channels.flatMap((channel, c): readonly Fault[] => {
    const i = Array.prototype.findIndex.call(channel, (sample: number) => !Number.isFinite(sample));
    const at = `${path}[${c}][${i}]`;
    if (i < 0) return [];
    return [{ code: 'not-finite', path: at, got: channel[i], expected: 'a finite number', remedy: 'Replace it.' }];
  });
}
