import { compressed, says } from './compressed.js';
import type { Decoder } from './recording.js';

/** Eleven ones, a version and a layer that exist: the start of a frame. */
const startsFrame = ([first = 0, second = 0]: Uint8Array): boolean =>
  first === 0xff && second >= 0xe0 && (second & 0x18) !== 0x08 && (second & 0x06) !== 0;

/** MP3, by the package `mpg123-decoder`, which is installed apart. The delay of the encoder is taken away where the file tells it. */
export const mp3: Decoder = compressed({
  name: 'MP3',
  package: 'mpg123-decoder',
  knows: (start) => says(start, 0, 'ID3') || startsFrame(start),
  make: async () => {
    const { MPEGDecoder } = await import('mpg123-decoder');
    return new MPEGDecoder();
  },
});
