import { refuse } from '@airspring/core/fault';
import { uniformAt } from '@airspring/core/numeric';
import { octaveTerms, powerOf, pyramid } from './octave-pyramid.js';
import type { Signal } from './signal.js';

/** Noise that is the same for each seed. */
export interface NoiseInput {
  /** A whole number from 0 to 2⁵³ − 1. */
  readonly seed: number;
}

/** The rate of the slowest level is at most this, Hz: what lies below about a fifth of it is missing. */
const SLOWEST = 2;

/**
 * Pink noise of rms 1: equal power in each octave. Any block can be made alone, and gives the same samples.
 *
 * $$ S(f) \propto 1/f $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $S$ | | 1/Hz | power spectral density |
 * | $f$ | | Hz | frequency |
 *
 * The density keeps to this within ±0.02 dB, from 1 Hz to 0.4535 of the sample rate (20 kHz at 44.1 kHz). Below 0.4 Hz it falls, so
 * that there is no constant part. Numbers are uniform before they are filtered: peaks are nearly those of normal noise, not exactly.
 *
 * @validity sample rates from 10 Hz; the first 2³² samples, a day at 48 kHz. Blocks of less than some hundred samples take longer for each sample.
 * @neglects nothing
 * @returns a signal
 * @throws InputError `not-finite`, `out-of-range`
 * @source voss1978 (power in proportion to 1/f, by sums of noise of different rates)
 * @source salmon2011 §4.2 (numbers from their place alone)
 * @example pinkNoise({ seed: 7 }).compile(48_000)(480_000, new Float64Array(4096))
 */
export function pinkNoise({ seed }: NoiseInput): Signal {
  return weightedNoise('pink noise', ['voss1978', 'salmon2011'], seed, () => 1);
}

/** Pink noise times a weight of the amplitude over frequency, Hz; rms 1 together. */
export function weightedNoise(
  name: string,
  sources: readonly string[],
  seed: number,
  weight: (frequency: number) => number,
): Signal {
  // Refuses the seed now, and not when it is compiled.
  uniformAt(seed);
  const compile: Signal['compile'] = (sampleRate) => {
    refuseSlow(sampleRate);
    const count = 1 + Math.max(0, Math.ceil(Math.log2(sampleRate / SLOWEST)));
    const levels = Array.from({ length: count }, (_, k) => octaveTerms((v) => weight((v * sampleRate) / 2 ** k)));
    const scale = 1 / Math.sqrt(levels.reduce((sum, terms, k) => sum + powerOf(terms, k), 0));
    const samples = pyramid(
      levels.map((terms) => terms.map((term) => scale * term)),
      seed,
    );
    return (from, out) => out.set(samples(from, out.length));
  };
  return { name: `${name}, seed ${seed}`, sources, compile };
}

function refuseSlow(sampleRate: number): void {
  if (sampleRate >= 10 && sampleRate <= 1e7) return;
  const expected = 'from 10 Hz to 10 MHz';
  refuse([
    { code: 'out-of-range', path: 'sampleRate', got: sampleRate, expected, remedy: 'Give a rate in that range.' },
  ]);
}
