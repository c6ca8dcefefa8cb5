import { fourier } from '../signal/fourier.js';
import type { DistortionBand } from './distortion-thresholds.js';

/** Ends of the band in which the tone itself is heard, as multiples of its frequency. */
const [LOWEST, HIGHEST] = [0.5, 1.5];
/** The least level that is reported, over that of the tone. */
const LEAST = 1e-15;

/** What the spectrum of a burst has: the greatest of the tone itself, and that of each band re it, dB. */
export interface BurstSpectrum {
  readonly tone: number;
  readonly levels: readonly number[];
}

/**
 * Prepares the spectrum of a burst with its decay, of a given number of samples, by a discrete Fourier transform with at least eight lines in the
 * width 1/T of a burst of duration T. Between lines the spectrum is a parabola, and at the ends of each band it is summed by itself,
 * since a skirt is greatest there.
 */
export function burstSpectrum(
  bands: readonly DistortionBand[],
  { frequency, sampleRate, burst, longest }: Readonly<Record<'frequency' | 'sampleRate' | 'burst' | 'longest', number>>,
): (signal: Float64Array) => BurstSpectrum {
  const length = 2 ** Math.ceil(Math.log2(Math.max(8 * burst, longest)));
  const highest = Math.max(HIGHEST, ...bands.map(({ to }) => to));
  const { re, im, transform } = lowLines(length, Math.ceil((highest * frequency * length) / sampleRate) + 2);
  const size = (k: number) => Math.sqrt(re[k]! ** 2 + im[k]! ** 2);
  return (signal) => {
    transform(signal);
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

/**
 * The lowest lines of the discrete Fourier transform of a real signal, which is filled up with zeros. It is divided into signals of every
 * R-th sample, whose short transforms have all that is needed; two of them are the real and the imaginary part of one.
 *
 * $$ X_k = \sum_{r<R} e^{-2\pi i k r/N}\,X^{(r)}_k $$
 */
function lowLines(length: number, lines: number) {
  let parts = 2;
  while (length / (2 * parts) > 2 * lines) parts *= 2;
  const short = length / parts;
  const fft = fourier(short);
  const [re, im, a, b] = [
    new Float64Array(lines),
    new Float64Array(lines),
    new Float64Array(short),
    new Float64Array(short),
  ];
  const turns = Float64Array.from({ length: 2 * parts * lines }, (_, at) => {
    const [k, r] = [(at >> 1) % lines, Math.floor((at >> 1) / lines)];
    const angle = (2 * Math.PI * ((k * r) % length)) / length;
    return at % 2 ? -Math.sin(angle) : Math.cos(angle);
  });
  const transform = (signal: Float64Array): void => {
    re.fill(0);
    im.fill(0);
    for (let r = 0; r < parts; r += 2) {
      for (let m = 0; m < short; m++) {
        a[m] = signal[parts * m + r] ?? 0;
        b[m] = signal[parts * m + r + 1] ?? 0;
      }
      fft(a, b);
      for (let k = 0; k < lines; k++) {
        const mirror = (short - k) % short;
        const [x, y, u, v] = [a[k]!, b[k]!, a[mirror]!, b[mirror]!];
        const [first, second] = [2 * (r * lines + k), 2 * ((r + 1) * lines + k)];
        const [c, s, d, t] = [turns[first]!, turns[first + 1]!, turns[second]!, turns[second + 1]!];
        // The even part of both is the transform of the first signal, the odd one i times that of the second.
        const [evenRe, evenIm, oddRe, oddIm] = [(x + u) / 2, (y - v) / 2, (y + v) / 2, (u - x) / 2];
        re[k]! += evenRe * c - evenIm * s + oddRe * d - oddIm * t;
        im[k]! += evenRe * s + evenIm * c + oddRe * t + oddIm * d;
      }
    }
  };
  return { re, im, transform };
}

/** The magnitude of the spectrum of a signal at a frequency, in turns per sample. */
function sizeAt(signal: Float64Array, turns: number): number {
  const [c, s] = [Math.cos(2 * Math.PI * turns), Math.sin(2 * Math.PI * turns)];
  // Horner's scheme: for each sample, the sum so far is turned by the angle of one sample.
  let [a, b] = [0, 0];
  for (let n = signal.length - 1; n >= 0; n--) {
    const turned = a * c - b * s + signal[n]!;
    b = a * s + b * c;
    a = turned;
  }
  return Math.hypot(a, b);
}
