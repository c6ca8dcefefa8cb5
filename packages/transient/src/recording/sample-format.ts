/** How one sample is written in bytes, the least significant byte first. Full scale is 1. */
export interface SampleFormat {
  readonly name: string;
  readonly bytes: number;
  /** 1 for whole numbers, 3 for floating point: the tag of the format in a WAV file. */
  readonly tag: 1 | 3;
  readonly read: (view: DataView, at: number) => number;
  /** Whole numbers are rounded, and cut off at full scale. */
  readonly write: (view: DataView, at: number, sample: number) => void;
}

const whole = (sample: number, scale: number): number =>
  Math.max(-scale, Math.min(scale - 1, Math.round(sample * scale)));

/** Whole numbers of 8 bits, which alone are written without sign. */
export const pcm8: SampleFormat = {
  name: '8-bit PCM',
  bytes: 1,
  tag: 1,
  read: (view, at) => (view.getUint8(at) - 128) / 128,
  write: (view, at, sample) => view.setUint8(at, whole(sample, 128) + 128),
};

/** Whole numbers of 16 bits. */
export const pcm16: SampleFormat = {
  name: '16-bit PCM',
  bytes: 2,
  tag: 1,
  read: (view, at) => view.getInt16(at, true) / 2 ** 15,
  write: (view, at, sample) => view.setInt16(at, whole(sample, 2 ** 15), true),
};

/** Whole numbers of 24 bits. */
export const pcm24: SampleFormat = {
  name: '24-bit PCM',
  bytes: 3,
  tag: 1,
  read: (view, at) => (view.getInt16(at + 1, true) * 256 + view.getUint8(at)) / 2 ** 23,
  write: (view, at, sample) => {
    const value = whole(sample, 2 ** 23);
    view.setUint8(at, value & 255);
    view.setInt16(at + 1, value >> 8, true);
  },
};

/** Whole numbers of 32 bits. */
export const pcm32: SampleFormat = {
  name: '32-bit PCM',
  bytes: 4,
  tag: 1,
  read: (view, at) => view.getInt32(at, true) / 2 ** 31,
  write: (view, at, sample) => view.setInt32(at, whole(sample, 2 ** 31), true),
};

/** Floating point of 32 bits. */
export const float32: SampleFormat = {
  name: '32-bit floating point',
  bytes: 4,
  tag: 3,
  read: (view, at) => view.getFloat32(at, true),
  write: (view, at, sample) => view.setFloat32(at, sample, true),
};

/** Floating point of 64 bits. */
export const float64: SampleFormat = {
  name: '64-bit floating point',
  bytes: 8,
  tag: 3,
  read: (view, at) => view.getFloat64(at, true),
  write: (view, at, sample) => view.setFloat64(at, sample, true),
};

export const sampleFormats = [pcm8, pcm16, pcm24, pcm32, float32, float64] as const;
