import { allowedVolume, type Job, type Weights } from '../job/job.js';

/** What a reader compares: the four criteria that trade against each other. */
export interface Criteria {
  /** Lowest frequency down to which the response and every limit hold at the wanted level, Hz. */
  depth: number;
  /** The greatest level of a steady sine, at the frequency of the band where it is least, dB. */
  level: number;
  /** Outer volume, m³. */
  volume: number;
  /** Work beyond the box, as metres of vent to print. */
  effort: number;
}

/**
 * Points of a box by the criteria that trade against each other. One point is one decibel of greatest level, a tenth of an
 * octave of depth, a tenth of a halving of the outer volume, or a tenth of a metre of vent to print.
 */
export const pointsOf = (job: Job, weights: Weights, criteria: Criteria): number =>
  compilePoints(job, weights)(criteria);

/** The same for many boxes. */
export function compilePoints(job: Job, { deep, loud, small, simple }: Weights): (criteria: Criteria) => number {
  const { lowest, level: wanted } = job.wanted;
  const allowed = allowedVolume(job);
  return ({ depth, level, volume, effort }) =>
    deep * 10 * Math.log2(lowest / depth) +
    loud * (level - wanted) +
    small * 10 * Math.log2(allowed / volume) -
    simple * 10 * effort;
}

/** Least weight: with a weight of 0 a box could win that is worse in that respect and gains nothing for it. */
const LEAST = 0.01;

/** The weights of the brief, and then those of a reader who prefers one criterion. */
export const leanings = ({ weights }: Job): readonly { readonly name: string; readonly weights: Weights }[] => {
  const base = {
    deep: Math.max(weights.deep, LEAST),
    loud: Math.max(weights.loud, LEAST),
    small: Math.max(weights.small, LEAST),
    simple: Math.max(weights.simple, LEAST),
  };
  const lean = (name: string, wish: keyof Weights) => ({ name, weights: { ...base, [wish]: 4 * base[wish] } });
  return [
    { name: 'balanced', weights: base },
    lean('deeper', 'deep'),
    lean('louder', 'loud'),
    lean('smaller', 'small'),
    lean('simpler', 'simple'),
  ];
};
