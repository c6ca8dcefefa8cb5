import { si } from '@airspring/core/quantity';
import { blockLength, type Decoder, type Recording, rateWarnings, refused, refuseNoise } from './recording.js';
import { bytesOf, type RecordingSource } from './source.js';

/** The samples of a piece of a file. */
interface Decoded {
  readonly channelData: readonly Float32Array[];
  readonly samplesDecoded: number;
  readonly sampleRate: number;
}

/** A decoder of another package: pieces of a file in, samples out. */
export interface PieceDecoder {
  readonly ready: Promise<void>;
  readonly decode: (bytes: Uint8Array) => Decoded | Promise<Decoded>;
  /** What is left when no piece follows. */
  readonly flush?: () => Promise<Decoded>;
  readonly free: () => void;
}

/** A compressed format and the package that decodes it. */
interface Compressed {
  readonly name: string;
  readonly package: string;
  readonly knows: Decoder['knows'];
  /** Loads the package, and makes a decoder. */
  readonly make: () => Promise<PieceDecoder>;
}

/** Bytes of a piece. The most that a format packs into one is a few million samples. */
const PIECE = 16_384;

/**
 * A format that another package decodes, which is loaded when the first file of it is opened. The number of frames is not told.
 * Parts that are damaged are left out; a file of which nothing can be decoded is refused.
 */
export function compressed(format: Compressed): Decoder {
  const open = async (source: RecordingSource): Promise<Recording> => {
    for await (const { channelData, sampleRate } of decoded(source, format)) {
      const channels = channelData.length;
      return {
        format: format.name,
        sampleRate: si('frequency', sampleRate),
        channels,
        warnings: rateWarnings(sampleRate),
        blocks: (options = {}) => blocksOf(source, format, sampleRate, channels, blockLength(options, channels)),
      };
    }
    const got = `a file as ${format.name}, of which nothing can be decoded`;
    throw refused('empty', 'recording', got, 'at least one frame of sound', 'Choose a recording with sound.');
  };
  return { name: format.name, knows: format.knows, open };
}

async function* blocksOf(source: RecordingSource, format: Compressed, rate: number, channels: number, length: number) {
  let from = 0;
  for await (const { channelData, samplesDecoded, sampleRate } of decoded(source, format)) {
    if (sampleRate !== rate || channelData.length !== channels) {
      const got = `${sampleRate} Hz and ${channelData.length} channels after ${from} frames`;
      const remedy = 'Divide the file where it changes.';
      throw refused('inconsistent', 'recording', got, `${rate} Hz and ${channels} channels throughout`, remedy);
    }
    for (let at = 0; at < samplesDecoded; at += length) {
      const end = Math.min(samplesDecoded, at + length);
      const block = channelData.map((channel) => Float64Array.from(channel.subarray(at, end)));
      refuseNoise(block, from + at);
      yield block;
    }
    from += samplesDecoded;
  }
}

/** The samples of a file from its start, as they come; never none. */
async function* decoded(source: RecordingSource, { make, name, package: from }: Compressed): AsyncGenerator<Decoded> {
  const decoder = await make().catch((error: unknown) => {
    const got = `${name}; its decoder was not loaded: ${error instanceof Error ? error.message : String(error)}`;
    throw refused('unknown-field', 'recording', got, `the package ${from}`, `Install it: npm install ${from}`);
  });
  try {
    await decoder.ready;
    for (let offset = 0; ; offset += PIECE) {
      const bytes = await bytesOf(source, offset, PIECE);
      if (bytes.length > 0) {
        const piece = await unlessDamaged(name, () => decoder.decode(bytes));
        if (piece.samplesDecoded > 0) yield piece;
      }
      if (bytes.length < PIECE) break;
    }
    const rest = await unlessDamaged(name, () => decoder.flush?.());
    if (rest && rest.samplesDecoded > 0) yield rest;
  } finally {
    decoder.free();
  }
}

/** What a decoder answers. It was written for whole files, and may stumble over others in any way. */
async function unlessDamaged<T>(name: string, decode: () => T | Promise<T>): Promise<T> {
  try {
    return await decode();
  } catch (error) {
    const got = `a file as ${name} that its decoder gives up: ${error instanceof Error ? error.message : String(error)}`;
    throw refused('inconsistent', 'recording', got, 'a file that is whole', 'Choose another copy of the file.');
  }
}

/** Whether bytes at a place are those of a text of plain letters. */
export const says = (start: Uint8Array, at: number, text: string): boolean =>
  start.length >= at + text.length && [...text].every((letter, i) => start[at + i] === letter.charCodeAt(0));
