import type { Job, Weights } from '../job/job.js';
import { type Criteria, pointsOf } from './points.js';
import { missed } from './wishes.js';

/** What one search minimises. It never falls when an excess rises, a criterion worsens: the search leaves out by that. */
export interface Cost {
  readonly of: (excess: Float64Array, criteria: Criteria) => number;
  /** Boxes of the lattice that are dearer by no more are walked from as well. */
  readonly slack: number;
  /** Nothing is cheaper: the search may end here. */
  readonly least: number;
}

/** Cost of a box that must meet every wish: what it misses first, then its points. */
export const costByPoints = (job: Job, weights: Weights): Cost => ({
  of: (excess, criteria) => {
    const miss = missed(excess);
    return miss > 0 ? 1e3 + 20 * miss : -pointsOf(job, weights, criteria);
  },
  slack: 1,
  least: -Infinity,
});

/** Cost of a box by what it misses alone, of the wishes in these places. */
export const costByMiss = (places: readonly number[]): Cost => ({
  of: (excess) => {
    let sum = 0;
    for (const place of places) sum += Math.max(0, excess[place] as number);
    return sum;
  },
  slack: 0.02,
  least: 0,
});
