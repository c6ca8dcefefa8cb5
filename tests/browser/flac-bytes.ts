/**
 * A FLAC file of 16 bits whose samples stand as they are: nothing is predicted, so that every decoder must give back these very
 * samples. After the published format (RFC 9639).
 */
const BLOCK = 4096;

/** Bits, the highest first. */
class Bits {
  readonly bytes: number[] = [];
  #held = 0;
  #count = 0;
  put(value: number, bits: number): void {
    for (let k = bits - 1; k >= 0; k--) {
      this.#held = (this.#held << 1) | (Math.floor(value / 2 ** k) & 1);
      if (++this.#count === 8) {
        this.bytes.push(this.#held);
        this.#held = this.#count = 0;
      }
    }
  }
}

const remainder = (bytes: readonly number[], polynomial: number, width: number): number => {
  const top = 1 << (width - 1);
  let rest = 0;
  for (const byte of bytes) {
    rest ^= byte << (width - 8);
    for (let k = 0; k < 8; k++) rest = ((rest << 1) ^ (rest & top ? polynomial : 0)) & (2 * top - 1);
  }
  return rest;
};

/** One channel at 48 kHz; whole blocks of 4096 samples, at most 127 of them. */
export function flacBytes(samples: Float64Array): Buffer {
  const head = new Bits();
  for (const letter of 'fLaC') head.put(letter.charCodeAt(0), 8);
  // The one block of metadata: sizes of blocks, of frames (not known), rate, channels, bits, samples, no checksum of the whole.
  for (const [value, bits] of [
    [0x80, 8],
    [34, 24],
    [BLOCK, 16],
    [BLOCK, 16],
    [0, 24],
    [0, 24],
    [48_000, 20],
    [0, 3],
    [15, 5],
    [samples.length, 36],
  ] as const)
    head.put(value, bits);
  const file = [...head.bytes, ...new Array<number>(16).fill(0)];
  for (let frame = 0; frame * BLOCK < samples.length; frame++) {
    const bits = new Bits();
    // Fixed size 4096, 48 kHz, one channel, 16 bits; the number of the frame.
    for (const [value, count] of [
      [0xfff8, 16],
      [0xca, 8],
      [0x08, 8],
      [frame, 8],
    ] as const)
      bits.put(value, count);
    bits.put(remainder(bits.bytes, 0x07, 8), 8);
    bits.put(0x02, 8);
    for (const sample of samples.subarray(frame * BLOCK, (frame + 1) * BLOCK))
      bits.put((Math.round(32_767 * sample) + 65_536) % 65_536, 16);
    bits.put(remainder(bits.bytes, 0x8005, 16), 16);
    for (const byte of bits.bytes) file.push(byte);
  }
  return Buffer.from(file);
}
