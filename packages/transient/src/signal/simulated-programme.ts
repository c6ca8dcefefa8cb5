import { type Fault, refuse } from '@airspring/core/fault';
import { type NoiseInput, weightedNoise } from './pink-noise.js';
import type { Signal } from './signal.js';

/** By how much programme differs from pink noise in a third of an octave. */
export interface ProgrammeWeight {
  /** Middle of the third octave, Hz. */
  readonly frequency: number;
  /** Level re pink noise, dB. */
  readonly level: number;
}

/**
 * Weights of the bass in simulated programme in the manner of IEC 60268-1. Status: from memory, of low certainty; the standard was
 * not read. It also takes the treble away, which these weights do not.
 */
export const simulatedProgrammeWeights: readonly ProgrammeWeight[] = [
  { frequency: 20, level: -13.5 },
  { frequency: 25, level: -10.2 },
  { frequency: 31.5, level: -7.4 },
  { frequency: 40, level: -5.2 },
  { frequency: 50, level: -3.5 },
  { frequency: 63, level: -2.3 },
  { frequency: 80, level: -1.4 },
  { frequency: 100, level: -0.9 },
  { frequency: 125, level: -0.5 },
  { frequency: 250, level: 0 },
];

/** Noise and how it differs from pink noise. */
export interface SimulatedProgrammeInput extends NoiseInput {
  /** By rising frequency; default {@link simulatedProgrammeWeights}. */
  readonly weights?: readonly ProgrammeWeight[] | undefined;
}

/**
 * Noise with the spectrum of programme: pink noise with third octaves weighted. Rms 1.
 *
 * $$ S(f) \propto 10^{w(f)/10}/f $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $w$ | `weights` | dB | level re pink noise |
 *
 * Between the given frequencies the level is a straight line over the logarithm of frequency. The slope of the first two goes on
 * below them; above the last the level stays. A programme of a lower crest factor is made by `clipped`.
 *
 * @validity as `pinkNoise`. The default weights are from memory, of low certainty.
 * @neglects that real programme is not steady: a piece of music has louder and softer parts
 * @returns a signal
 * @throws InputError `empty`, `unsorted`, `not-finite`, `out-of-range`
 * @source iec60268-1 (from memory)
 * @example simulatedProgramme({ seed: 7 }).compile(48_000)(0, new Float64Array(4096))
 */
export function simulatedProgramme({ seed, weights = simulatedProgrammeWeights }: SimulatedProgrammeInput): Signal {
  refuseWeights(weights);
  return weightedNoise(
    'simulated programme',
    ['iec60268-1'],
    seed,
    (frequency) => 10 ** (levelAt(weights, frequency) / 20),
  );
}

const GREATEST = 200;

/** The level between the weights, dB. */
function levelAt(weights: readonly ProgrammeWeight[], frequency: number): number {
  const [first, last] = [weights[0]!, weights.at(-1)!];
  if (frequency >= last.frequency) return last.level;
  const after = Math.max(
    1,
    weights.findIndex((weight) => weight.frequency > frequency),
  );
  const [low, high] = [weights[after - 1]!, weights[after] ?? first];
  if (low === high) return low.level;
  const way = Math.log(frequency / low.frequency) / Math.log(high.frequency / low.frequency);
  // The slope below the first weight goes on, but not without end.
  return Math.max(-GREATEST, Math.min(GREATEST, low.level + way * (high.level - low.level)));
}

function refuseWeights(weights: readonly ProgrammeWeight[]): void {
  if (weights.length === 0) {
    const remedy = 'Give at least one frequency with its level.';
    refuse([{ code: 'empty', path: 'weights', got: weights, expected: 'at least one weight', remedy }]);
  }
  refuse(weights.flatMap((weight, i) => weightFaults(`weights[${i}]`, weight, weights[i - 1]?.frequency ?? 0)));
}

function weightFaults(path: string, { frequency, level }: ProgrammeWeight, before: number): readonly Fault[] {
  const got = `${frequency} Hz, ${level} dB`;
  if (!Number.isFinite(frequency) || !Number.isFinite(level)) {
    return [
      { code: 'not-finite', path, got, expected: 'a finite frequency and level', remedy: 'Replace NaN or infinity.' },
    ];
  }
  if (!(frequency >= 0.1 && frequency <= 1e7 && Math.abs(level) <= GREATEST)) {
    const expected = `from 0.1 Hz to 10 MHz, and from −${GREATEST} dB to ${GREATEST} dB`;
    return [{ code: 'out-of-range', path, got, expected, remedy: 'Give values in that range.' }];
  }
  // Neighbours that are closer than this would make the slope between them too steep.
  if (frequency >= 1.001 * before) return [];
  const expected = `more than ${before} Hz, which stands before it`;
  return [{ code: 'unsorted', path, got, expected, remedy: 'Give the weights by rising frequency.' }];
}
