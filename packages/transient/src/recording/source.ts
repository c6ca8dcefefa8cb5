import { refuse } from '@airspring/core/fault';

/** Where the bytes of a recording come from: a file, a blob, a part of memory. */
export interface RecordingSource {
  /** Bytes in all. If it is left out, it is found by some fifty reads of one byte. */
  readonly size?: number | undefined;
  /** Bytes from an offset on. Fewer than asked for, or none, means that the source ends there. */
  readonly read: (offset: number, length: number) => Promise<Uint8Array>;
}

/** What is used of a `Blob` or `File` of a browser. */
export interface BlobLike {
  readonly size: number;
  readonly slice: (start: number, end: number) => { readonly arrayBuffer: () => Promise<ArrayBuffer> };
}

/** What is used of a `FileHandle`, as `open` of `node:fs/promises` gives it. */
export interface FileHandleLike {
  readonly stat: () => Promise<{ readonly size: number }>;
  readonly read: (
    buffer: Uint8Array,
    offset: number,
    length: number,
    position: number,
  ) => Promise<{ readonly bytesRead: number }>;
}

/**
 * Bytes in memory as a source.
 *
 * @validity any bytes
 * @source own
 * @example recordingFrom(sourceOfBytes(wavBytes({ sampleRate: '48 kHz', channels: [samples] })))
 */
export const sourceOfBytes = (bytes: Uint8Array): RecordingSource => ({
  size: bytes.length,
  read: async (offset, length) => bytes.subarray(offset, offset + length),
});

/**
 * A file that was dropped or chosen in a browser as a source. It is read piece by piece and stays where it is.
 *
 * @validity a `Blob` or `File`
 * @source own
 * @example recordingFrom(sourceOfBlob(input.files[0]))
 */
export const sourceOfBlob = (blob: BlobLike): RecordingSource => ({
  size: blob.size,
  read: async (offset, length) => new Uint8Array(await blob.slice(offset, offset + length).arrayBuffer()),
});

/**
 * An open file of Node as a source. The caller opens it, and closes it when the recording was read.
 *
 * @validity a `FileHandle` of a file, not of a pipe
 * @source own
 * @example recordingFrom(await sourceOfFile(await open('thunder.wav')))
 */
export async function sourceOfFile(file: FileHandleLike): Promise<RecordingSource> {
  const { size } = await file.stat();
  const read: RecordingSource['read'] = async (offset, length) => {
    const bytes = new Uint8Array(length);
    let held = 0;
    while (held < length) {
      const { bytesRead } = await file.read(bytes, held, length - held, offset + held);
      if (bytesRead === 0) break;
      held += bytesRead;
    }
    return bytes.subarray(0, held);
  };
  return { size, read };
}

/** Reads, and refuses an answer that is no answer to what was asked. */
export async function bytesOf(source: RecordingSource, offset: number, length: number): Promise<Uint8Array> {
  const bytes: unknown = await source.read(offset, length);
  if (bytes instanceof Uint8Array && bytes.length <= length) return bytes;
  const expected = `a Uint8Array of at most ${length} bytes`;
  const got = bytes instanceof Uint8Array ? `${bytes.length} bytes` : bytes;
  refuse([
    { code: 'inconsistent', path: 'recording.read', got, expected, remedy: 'Mend the source of the recording.' },
  ]);
  return new Uint8Array();
}

const greatestSize = 2 ** 52;

/** Bytes of a source: what it says, or the first offset at which it has none. */
export async function sizeOf(source: RecordingSource): Promise<number> {
  if (source.size !== undefined) {
    if (Number.isInteger(source.size) && source.size >= 0) return source.size;
    const remedy = 'Give the number of bytes, or leave it out.';
    refuse([{ code: 'out-of-range', path: 'recording.size', got: source.size, expected: 'a whole number', remedy }]);
  }
  const has = async (byte: number) => (await bytesOf(source, byte, 1)).length > 0;
  let [low, high] = [0, 1];
  while (high < greatestSize && (await has(high - 1))) {
    low = high;
    high *= 2;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (await has(middle - 1)) low = middle;
    else high = middle;
  }
  return low;
}
