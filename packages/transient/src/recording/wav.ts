import type { Warning } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { blockLength, type Decoder, type Recording, rateWarnings, refused, refuseNoise } from './recording.js';
import type { SampleFormat } from './sample-format.js';
import { bytesOf, type RecordingSource } from './source.js';
import { startsAsWav, type WavHeader, wavHeader } from './wav-header.js';

/** WAV: whole numbers of 8 to 32 bits and floating point, with any extension of the header that is in use. */
export const wav: Decoder = {
  name: 'WAV',
  knows: startsAsWav,
  open: async (source): Promise<Recording> => {
    const header = await wavHeader(source);
    const { sampleRate, channels, format, frames } = header;
    return {
      format: `WAV, ${format.name}`,
      sampleRate: si('frequency', sampleRate),
      channels,
      frames,
      duration: si('time', frames / sampleRate),
      warnings: [...rateWarnings(sampleRate), ...endWarnings(header)],
      blocks: (options = {}) => blocksOf(source, header, blockLength(options, channels)),
    };
  },
};

const endWarnings = ({ frames, promised }: WavHeader): readonly Warning[] =>
  frames >= promised
    ? []
    : [
        {
          code: 'outside-validity',
          path: 'recording.frames',
          got: frames,
          expected: `${promised} frames, as the header says: the end is missing`,
        },
      ];

async function* blocksOf(source: RecordingSource, { channels, format, offset, frames }: WavHeader, length: number) {
  const frameBytes = channels * format.bytes;
  for (let from = 0; from < frames; from += length) {
    const count = Math.min(length, frames - from);
    const bytes = await bytesOf(source, offset + from * frameBytes, count * frameBytes);
    if (bytes.length < count * frameBytes) {
      const got = `${offset + from * frameBytes + bytes.length} bytes`;
      const remedy = 'The file became shorter while it was read: open it again.';
      throw refused('inconsistent', 'recording.size', got, `${offset + frames * frameBytes} bytes`, remedy);
    }
    const block = Array.from({ length: channels }, () => new Float64Array(count));
    decode(bytes, format, block);
    if (format.tag === 3) refuseNoise(block, from);
    yield block;
  }
}

/** Frames of samples, one after the other, to an array for each channel; a kernel. */
function decode(bytes: Uint8Array, { bytes: step, read }: SampleFormat, out: readonly Float64Array[]): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const frameBytes = out.length * step;
  for (let c = 0; c < out.length; c++) {
    const channel = out[c]!;
    for (let i = 0, at = c * step; i < channel.length; i++, at += frameBytes) channel[i] = read(view, at);
  }
}
