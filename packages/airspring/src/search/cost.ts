import type { Job, Weights } from '../job/job.js';
import { type Criteria, compilePoints } from './points.js';
import { missed } from './wishes.js';

/** What one search minimises. It must never fall when an excess rises or a criterion gets worse: pruning relies on that. */
export interface Cost {
  readonly of: (excess: Float64Array, criteria: Criteria) => number;
  /** Walks also start from boxes of the lattice that cost at most this much more than the best. */
  readonly slack: number;
  /** The least possible cost: the search may end when it is reached. */
  readonly least: number;
  /** Whether the excesses alone decide; those of the size then add to what the others cost. */
  readonly byMiss?: true;
  /** Dearer boxes are of no use; default all are. */
  readonly most?: number;
}

/**
 * No walk leads from a box of the lattice that misses more, as a sum of relative excesses, to one that meets every wish. A box
 * that meets them has one of the coarse look beside it, half a step away at most: 6 % in volume, 4.5 % in tuning, 11 % in the
 * diameter of a vent. That box misses the cut-off by 0.05, travel and rise by twice as much and the volume, the drive and the
 * current by the volume and the tuning, and the air speed by twice the diameter and the tuning: about 0.8 if it misses all of
 * them at once. This is reasoning, not proof; a property searches for briefs that refute it.
 */
const HOPELESS = 1;

/** Cost of a box that must meet every wish: first by what it misses, then by its points. */
export function costByPoints(job: Job, weights: Weights): Cost {
  const points = compilePoints(job, weights);
  return {
    of: (excess, criteria) => {
      const miss = missed(excess);
      return miss > 0 ? 1e3 + 20 * miss : -points(criteria);
    },
    slack: 1,
    least: -Infinity,
    most: 1e3 + 20 * HOPELESS,
  };
}

/** Cost of a box that must only meet every wish: the same order as by points, until one is found that does. */
export const costOfMeeting = { of: missed, slack: 1 / 20, least: 0, byMiss: true, most: HOPELESS } satisfies Cost;

/** Cost of a box by what it misses of the wishes in these places, and by nothing else. */
export const costByMiss = (places: readonly number[]): Cost => ({
  of: (excess) => {
    let sum = 0;
    for (let n = 0; n < places.length; n++) sum += Math.max(0, excess[places[n]!]!);
    return sum;
  },
  slack: 0.02,
  least: 0,
  byMiss: true,
});
