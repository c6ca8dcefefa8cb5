import { compressed, says } from './compressed.js';
import type { Decoder } from './recording.js';

/**
 * FLAC, by the package `@wasm-audio-decoders/flac`, which is installed apart. It takes the greatest number, 32,767 of 16 bits, for full
 * scale: 0.0003 dB louder than WAV.
 */
export const flac: Decoder = compressed({
  name: 'FLAC',
  package: '@wasm-audio-decoders/flac',
  knows: (start) => says(start, 0, 'fLaC'),
  make: async () => {
    const { FLACDecoder } = await import('@wasm-audio-decoders/flac');
    return new FLACDecoder();
  },
});
