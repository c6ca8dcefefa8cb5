import { fourier } from './fourier.js';

/** What was heard so far of a signal. */
export interface Heard {
  /** Samples that wait for the rest of two segments. */
  readonly waiting: Float64Array;
  /** Sums of the powers of all segments. */
  readonly powers: Float64Array;
  held: number;
  segments: number;
  samples: number;
  sum: number;
  sumOfSquares: number;
  /** The greatest and the least sample. */
  greatest: number;
  least: number;
}

/** Power spectral density, from 0 to half the sample rate. */
export interface Spectrum {
  /** Hz. */
  readonly frequencies: Float64Array;
  /** Square of the unit of the signal, per Hz. */
  readonly density: Float64Array;
}

/** The mean of the spectra of many segments, each half over the one before it. */
export interface Welch {
  readonly start: () => Heard;
  /** Takes the next block; a kernel. */
  readonly take: (heard: Heard, block: Float64Array) => void;
  /** The spectrum of what was heard so far. It must be one sample at least. */
  readonly spectrum: (heard: Heard) => Spectrum;
  /**
   * The same for what is read of more than its lowest lines. A constant part stays within the first two lines of whole segments. That
   * of a signal shorter than one would spread over many: there the mean is taken away.
   */
  readonly changing: (heard: Heard) => Spectrum;
  /** Distance of frequencies that are told apart, Hz: over that of the lines, for a signal shorter than a segment. */
  readonly resolved: (heard: Heard) => number;
}

const hann = (length: number) => Float64Array.from({ length }, (_, i) => Math.sin((Math.PI * i) / length) ** 2);

/**
 * Prepares the method of Welch for segments of a length that is a power of two, under a Hann window, half overlapping, with the
 * constant part left in. Two segments are transformed as one complex sequence z, since only the sum of their powers is asked for:
 * |X₁(k)|² + |X₂(k)|² = (|Z(k)|² + |Z(−k)|²)/2.
 *
 * @source welch1967 (method)
 */
export function welch(sampleRate: number, length: number): Welch {
  const window = hann(length);
  const transform = fourier(length);
  const [re, im] = [new Float64Array(length), new Float64Array(length)];
  const hop = length / 2;

  const addPowers = (powers: Float64Array) => {
    transform(re, im);
    for (let k = 0; k <= hop; k++) {
      const mirror = (length - k) % length;
      powers[k]! += (re[k]! ** 2 + im[k]! ** 2 + re[mirror]! ** 2 + im[mirror]! ** 2) / 2;
    }
  };
  const addTwo = (heard: Heard) => {
    for (let i = 0; i < length; i++) {
      re[i] = window[i]! * heard.waiting[i]!;
      im[i] = window[i]! * heard.waiting[i + hop]!;
    }
    addPowers(heard.powers);
    heard.segments += 2;
    heard.waiting.copyWithin(0, length);
    heard.held = hop;
  };
  /** Powers of what waits for a second segment, or of a signal that is shorter than one. */
  const addLast = (heard: Heard, taper: Float64Array, constant: number) => {
    re.fill(0);
    im.fill(0);
    for (let i = 0; i < taper.length; i++) re[i] = taper[i]! * (heard.waiting[i]! - constant);
    const powers = Float64Array.from(heard.powers);
    addPowers(powers);
    return powers;
  };

  const take: Welch['take'] = (heard, block) => {
    for (let at = 0; at < block.length; ) {
      const count = Math.min(block.length - at, heard.waiting.length - heard.held);
      heard.waiting.set(block.subarray(at, at + count), heard.held);
      heard.held += count;
      at += count;
      if (heard.held === heard.waiting.length) addTwo(heard);
    }
    for (let i = 0; i < block.length; i++) {
      const sample = block[i]!;
      heard.sum += sample;
      heard.sumOfSquares += sample * sample;
      if (sample > heard.greatest) heard.greatest = sample;
      if (sample < heard.least) heard.least = sample;
    }
    heard.samples += block.length;
  };

  const isShort = ({ samples }: Heard) => samples < length;
  const without = (heard: Heard, constant: number): Spectrum => {
    const short = isShort(heard);
    const odd = short || heard.held >= length;
    // A window of one sample would be zero.
    const taper = short ? hann(heard.samples + 1).subarray(1) : window;
    const powers = odd ? addLast(heard, taper, constant) : heard.powers;
    const energy = taper.reduce((sum, size) => sum + size * size, 0);
    const scale = 1 / (sampleRate * energy * (heard.segments + (odd ? 1 : 0)));
    return {
      frequencies: Float64Array.from({ length: hop + 1 }, (_, k) => (k * sampleRate) / length),
      density: Float64Array.from(powers, (power, k) => (k === 0 || k === hop ? 1 : 2) * scale * power),
    };
  };

  const start = (): Heard => ({
    waiting: new Float64Array(length + hop),
    powers: new Float64Array(hop + 1),
    ...{ held: 0, segments: 0, samples: 0, sum: 0, sumOfSquares: 0 },
    ...{ greatest: -Infinity, least: Infinity },
  });
  return {
    start,
    take,
    spectrum: (heard) => without(heard, 0),
    changing: (heard) => without(heard, isShort(heard) ? heard.sum / heard.samples : 0),
    resolved: ({ samples }) => sampleRate / Math.min(samples, length),
  };
}
