import { type Job, SHORTEST_BAND } from '../job/job.js';
import type { Wish } from '../kind/wish.js';
import type { Cost } from './cost.js';
import type { Search } from './search.js';

/** What a wish weighs that does not yield by degrees. */
const FIRM = 1e3;

/** A wish weighs 1 where the brief has no weight for it. No wish weighs nothing, or it would yield without end. */
export const weightOf = (job: Job, { weight, firm }: Wish): number =>
  firm ? FIRM : weight === undefined ? 1 : Math.max(0.05, job.weights[weight]);

/** The place of a wish among the excesses. */
export const placeOf = ({ wishes }: Search, path: string): number =>
  wishes.list.findIndex((wish) => wish.path === path);

/** What a box costs when wishes yield to it, and by how much the level is lowered for that. */
interface Yielding extends Cost {
  readonly down: (excess: Float64Array) => number;
}

/**
 * Each missed wish costs its relative excess times its weight. A lower level eases other wishes as well, so the cost is taken
 * at the best of the few levels at which one of them is just met.
 */
export function yieldingOf(search: Search): Yielding {
  const { job, wishes } = search;
  const { lowest, highest } = job.wanted;
  const [LOWEST, LEVEL] = [placeOf(search, 'wanted.lowest'), placeOf(search, 'wanted.level')];
  const weights = Float64Array.from(wishes.list, (wish) => weightOf(job, wish));
  const eased = [...wishes.list.keys()].filter((i) => wishes.list[i]?.easedByLevel && i !== LEVEL);
  const fixed = [...wishes.list.keys()].filter((i) => i !== LEVEL && !eased.includes(i));
  const levels = [LEVEL, ...eased];
  const highestBeginning = Math.max(0, Math.log(highest / SHORTEST_BAND / lowest));
  const lowered = (excess: Float64Array, i: number) => Math.max(0, excess[LEVEL]!, excess[i]!);
  const loud = (excess: Float64Array, down: number) => {
    let cost = weights[LEVEL]! * down;
    for (let n = 0; n < eased.length; n++) {
      const k = eased[n]!;
      cost += weights[k]! * Math.max(0, excess[k]! - down);
    }
    return cost;
  };
  return {
    of: (excess) => {
      if (excess[LOWEST]! > highestBeginning) return Infinity;
      let cost = 0;
      // By their places, since this is asked for each box of the lattice.
      for (let n = 0; n < fixed.length; n++) cost += weights[fixed[n]!]! * Math.max(0, excess[fixed[n]!]!);
      let least = Infinity;
      for (let n = 0; n < levels.length; n++) least = Math.min(least, loud(excess, lowered(excess, levels[n]!)));
      return cost + least;
    },
    down: (excess) =>
      levels
        .map((i) => lowered(excess, i))
        .reduce((best, down) => (loud(excess, down) < loud(excess, best) ? down : best)),
    slack: 0.02,
    least: 0,
    byMiss: true,
  };
}
