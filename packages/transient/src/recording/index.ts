/** How is a recording opened, and what is it? */
export { type RecordingOptions, recordingFrom, standardDecoders } from './recording-from.js';
export type { BlockOptions, Decoder, Recording } from './recording.js';
/** Where do its bytes come from: a file of Node, a file in a browser, or memory? */
export {
  type BlobLike,
  type FileHandleLike,
  type RecordingSource,
  sourceOfBlob,
  sourceOfBytes,
  sourceOfFile,
} from './source.js';
/** Which formats can be read? */
export { wav } from './wav.js';
export { flac } from './flac.js';
export { mp3 } from './mp3.js';
export { oggVorbis } from './ogg-vorbis.js';
/** How is sound written as a file? */
export { type WavInput, wavBytes } from './wav-bytes.js';
export { float32, float64, pcm8, pcm16, pcm24, pcm32, type SampleFormat } from './sample-format.js';
/** How do several channels become one? */
export { mixDown } from './mix-down.js';
/** How is the power of a recording spread over frequency, and how far do its peaks stand out? */
export { programmeOfRecording, type RecordingProgrammeOptions } from './programme-of-recording.js';
/** How is sound brought to another sample rate? */
export { compileResampler, type Resampler, type Resampling, type ResamplingInput, resample } from './resampler.js';
export { resampled } from './resampled.js';
/** Does a decoder of your own obey its laws? */
export { decoderLaws } from './decoder-laws.js';
