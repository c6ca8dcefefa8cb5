import { compressed, says } from './compressed.js';
import type { Decoder } from './recording.js';

/** Ogg Vorbis, by the package `@wasm-audio-decoders/ogg-vorbis`, which is installed apart. */
export const oggVorbis: Decoder = compressed({
  name: 'Ogg Vorbis',
  package: '@wasm-audio-decoders/ogg-vorbis',
  // The first page holds the first header alone, after 27 bytes and one that says how long it is.
  knows: (start) => says(start, 0, 'OggS') && says(start, 29, 'vorbis'),
  make: async () => {
    const { OggVorbisDecoder } = await import('@wasm-audio-decoders/ogg-vorbis');
    return new OggVorbisDecoder();
  },
});
