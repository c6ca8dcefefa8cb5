import { refused } from './recording.js';
import { type SampleFormat, sampleFormats } from './sample-format.js';
import { bytesOf, type RecordingSource, sizeOf } from './source.js';

/** Where the samples of a WAV file are, and how they are written. */
export interface WavHeader {
  readonly sampleRate: number;
  readonly channels: number;
  readonly format: SampleFormat;
  /** Offset of the first frame. */
  readonly offset: number;
  /** Frames that are there. */
  readonly frames: number;
  /** Frames that the header promises. */
  readonly promised: number;
}

const START = 4096;
/** Bytes of a chunk that are looked at: its name, its size, and all of a format that counts. */
const LOOK = 48;
/** Chunks that are looked at; a file has about ten. */
const mostChunks = 1000;
const UNKNOWN = 0xffff_ffff;

const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const nameAt = (bytes: Uint8Array, at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));

/** Whether a file begins as a WAV file does. */
export const startsAsWav = (start: Uint8Array): boolean =>
  ['RIFF', 'RF64', 'BW64'].includes(nameAt(start, 0)) && nameAt(start, 8) === 'WAVE';

/**
 * Reads the chunks of a WAV file up to its sound: the first 4 kB, and a few bytes of each chunk beyond them.
 *
 * @source ibm1991 (RIFF and WAVE)
 * @source ebu3306 (RF64)
 */
export async function wavHeader(source: RecordingSource): Promise<WavHeader> {
  const size = await sizeOf(source);
  const start = await bytesOf(source, 0, START);
  const riffSize = start.length >= 8 ? viewOf(start).getUint32(4, true) : 0;
  let format: Format | undefined;
  let data: { readonly offset: number; readonly bytes: number } | undefined;
  let long: number | undefined;
  let offset = 12;
  for (let chunk = 0; chunk < mostChunks && offset + 8 <= size && !(format && data); chunk++) {
    const look =
      offset + LOOK <= start.length ? start.subarray(offset, offset + LOOK) : await bytesOf(source, offset, LOOK);
    if (look.length < 8) break;
    const name = nameAt(look, 0);
    let bytes = viewOf(look).getUint32(4, true);
    if (name === 'ds64' && look.length >= 24) long = Number(viewOf(look).getBigUint64(16, true));
    if (name === 'fmt ') format = formatOf(look.subarray(8, 8 + bytes));
    if (name === 'data') {
      // Who writes to a pipe cannot go back to write the size: it stays at all ones, or at zero as that of the file does.
      const toTheEnd = size - offset - 8;
      if (bytes === UNKNOWN) bytes = long || toTheEnd;
      else if (bytes === 0 && riffSize === 0) bytes = toTheEnd;
      data = { offset: offset + 8, bytes };
    }
    // Chunks begin at even offsets.
    offset += 8 + bytes + (bytes % 2);
  }
  if (!format) throw missing('a description of its format');
  if (!data) throw missing('samples');
  const frameBytes = format.channels * format.format.bytes;
  const frames = Math.floor(Math.min(data.bytes, Math.max(0, size - data.offset)) / frameBytes);
  if (frames === 0) {
    throw refused('empty', 'recording.frames', 0, 'at least one frame of sound', 'Choose a recording with sound.');
  }
  return { ...format, offset: data.offset, frames, promised: Math.floor(data.bytes / frameBytes) };
}

const missing = (what: string) =>
  refused('empty', 'recording', `a WAV file without ${what}`, `a WAV file with ${what}`, 'Save it anew.');

type Format = Pick<WavHeader, 'sampleRate' | 'channels' | 'format'>;
const EXTENSIBLE = 0xfffe;

/** Reads the chunk of the format. */
function formatOf(bytes: Uint8Array): Format {
  if (bytes.length < 16) throw missing('a whole description of its format');
  const view = viewOf(bytes);
  const [channels, sampleRate] = [view.getUint16(2, true), view.getUint32(4, true)];
  const [frameBytes, bits] = [view.getUint16(12, true), view.getUint16(14, true)];
  const extensible = view.getUint16(0, true) === EXTENSIBLE && bytes.length >= 26;
  const tag = view.getUint16(extensible ? 24 : 0, true);
  if (channels === 0) throw refused('empty', 'recording.channels', 0, 'at least one channel', 'Save it anew.');
  if (sampleRate < 1 || sampleRate > 1e7) {
    throw refused('out-of-range', 'recording.sampleRate', sampleRate, 'from 1 Hz to 10 MHz', 'Save it anew.');
  }
  // Bits below those of a container are zero: the container alone says where full scale is.
  const container = frameBytes > 0 ? frameBytes / channels : Math.ceil(bits / 8);
  const format = sampleFormats.find((one) => one.tag === tag && one.bytes === container);
  if (!format || bits > 8 * container) {
    const got = `format ${tag} with ${bits} bits in ${container} bytes`;
    const expected = 'whole numbers of 8, 16, 24 or 32 bits, or floating point of 32 or 64';
    throw refused('unknown-field', 'recording.format', got, expected, 'Save it as 16-bit or 24-bit PCM.');
  }
  return { sampleRate, channels, format };
}
