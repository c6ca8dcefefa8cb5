import { flac } from './flac.js';
import { mp3 } from './mp3.js';
import { oggVorbis } from './ogg-vorbis.js';
import { type Decoder, type Recording, refused } from './recording.js';
import { bytesOf, type RecordingSource } from './source.js';
import { wav } from './wav.js';

/** How a recording is opened. */
export interface RecordingOptions {
  /** Formats that are tried, in this order; default {@link standardDecoders}. */
  readonly decoders?: readonly Decoder[] | undefined;
}

/** The formats that are read if nothing else is said. All but WAV need a package that is loaded on demand. */
export const standardDecoders: readonly Decoder[] = [wav, flac, oggVorbis, mp3];

const START = 4096;

/**
 * Opens a recording: reads its header, and hands back how its sound is read, block by block and in constant memory.
 *
 * An end that is missing is told in `warnings`, and what is there is read. A size that was never written, as in a stream, means up to
 * the end of the file. Samples that are not finite, or more than a million times full scale, are refused when their block is read.
 *
 * @validity recordings of 1 to 65,535 channels, at 1 Hz to 10 MHz; outside 4 kHz to 768 kHz with a warning
 * @neglects what else a file holds, such as titles and the places of channels
 * @returns the recording
 * @throws InputError `empty` (no sound), `unknown-field` (a format that no decoder knows), `out-of-range`, `not-finite`, `inconsistent`
 * @source ibm1991 (RIFF and WAVE)
 * @source ebu3306 (RF64)
 * @example for await (const [left, right] of (await recordingFrom(sourceOfBlob(file))).blocks()) listen(left, right);
 */
export async function recordingFrom(
  source: RecordingSource,
  { decoders = standardDecoders }: RecordingOptions = {},
): Promise<Recording> {
  const start = await bytesOf(source, 0, START);
  const decoder = decoders.find(({ knows }) => knows(start));
  if (decoder) return decoder.open(source);
  const expected = `a recording as ${decoders.map(({ name }) => name).join(', ')}`;
  if (start.length === 0) throw refused('empty', 'recording', 'no bytes', expected, 'Choose another file.');
  const got = `a file that begins with ${[...start.subarray(0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join(' ')}`;
  throw refused('unknown-field', 'recording', got, expected, 'Convert it to WAV, or pass a decoder that knows it.');
}
