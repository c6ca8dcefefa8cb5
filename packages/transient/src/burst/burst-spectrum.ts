import { fourier } from '../signal/fourier.js';
import type { DistortionBand } from './distortion-thresholds.js';

/** Ends of the band in which the tone itself is heard, as multiples of its frequency. */
const [LOWEST, HIGHEST] = [0.5, 1.5];
/** Levels are told down to this part of the tone. */
const LEAST = 1e-15;

/** What the spectrum of a burst has: the greatest of the tone itself, and that of each band re it, dB. */
export interface BurstSpectrum {
  readonly tone: number;
  readonly levels: readonly number[];
}

/**
 * Prepares the spectrum of a burst of so many samples with its decay, by a discrete Fourier transform with at least eight lines in the
 * width 1/T of a burst of duration T. Between lines the spectrum is a parabola, and at the ends of each band it is summed by itself,
 * since a skirt is greatest there.
 */
export function burstSpectrum(
  bands: readonly DistortionBand[],
  { frequency, sampleRate, burst, longest }: Readonly<Record<'frequency' | 'sampleRate' | 'burst' | 'longest', number>>,
): (signal: Float64Array) => BurstSpectrum {
  const length = 2 ** Math.ceil(Math.log2(Math.max(8 * burst, longest)));
  const transform = fourier(length);
  const [re, im] = [new Float64Array(length), new Float64Array(length)];
  const size = (k: number) => Math.sqrt(re[k]! ** 2 + im[k]! ** 2);
  return (signal) => {
    re.fill(0);
    re.set(signal);
    im.fill(0);
    transform(re, im);
    const greatest = (from: number, to: number) => {
      let most = Math.max(
        sizeAt(signal, (from * frequency) / sampleRate),
        sizeAt(signal, (to * frequency) / sampleRate),
      );
      const line = (multiple: number) => Math.min(length / 2, (multiple * frequency * length) / sampleRate);
      for (let k = Math.ceil(line(from)); k < line(to); k++) {
        const [before, here, after] = [size(k - 1), size(k), size(k + 1)];
        most = Math.max(most, here);
        if (here < before || here < after || k - 1 < line(from) || k + 1 > line(to)) continue;
        const bend = 2 * here - before - after;
        if (bend > 0) most = Math.max(most, here + (after - before) ** 2 / (8 * bend));
      }
      return most;
    };
    const tone = greatest(LOWEST, HIGHEST);
    return { tone, levels: bands.map(({ from, to }) => 20 * Math.log10(Math.max(greatest(from, to) / tone, LEAST))) };
  };
}

/** The magnitude of the spectrum of a signal at a frequency, in turns a sample. */
function sizeAt(signal: Float64Array, turns: number): number {
  const [c, s] = [Math.cos(2 * Math.PI * turns), Math.sin(2 * Math.PI * turns)];
  // By the rule of Horner: each sample is turned on by those after it.
  let [a, b] = [0, 0];
  for (let n = signal.length - 1; n >= 0; n--) {
    const turned = a * c - b * s + signal[n]!;
    b = a * s + b * c;
    a = turned;
  }
  return Math.hypot(a, b);
}
