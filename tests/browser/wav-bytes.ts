/** A WAV file of whole numbers, each channel the same samples; written apart from the library. */
export function wavBytes(samples: Float64Array, channels = 1, bytes: 1 | 2 = 2, sampleRate = 48_000): Buffer {
  const frame = channels * bytes;
  const file = Buffer.alloc(44 + samples.length * frame);
  file.write('RIFF', 0);
  file.writeUInt32LE(file.length - 8, 4);
  file.write('WAVEfmt ', 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(channels, 22);
  file.writeUInt32LE(sampleRate, 24);
  file.writeUInt32LE(sampleRate * frame, 28);
  file.writeUInt16LE(frame, 32);
  file.writeUInt16LE(8 * bytes, 34);
  file.write('data', 36);
  file.writeUInt32LE(samples.length * frame, 40);
  for (let i = 0, at = 44; i < samples.length; i++) {
    for (let c = 0; c < channels; c++, at += bytes) {
      if (bytes === 2) file.writeInt16LE(Math.round(32_767 * samples[i]!), at);
      else file.writeUInt8(Math.round(128 + 127 * samples[i]!), at);
    }
  }
  return file;
}
