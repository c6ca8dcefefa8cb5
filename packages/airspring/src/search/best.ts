import { WITHIN } from './axis.js';
import type { Box } from './box.js';
import { costByPoints, costOfMeeting } from './cost.js';
import { explore } from './explore.js';
import { leanings } from './points.js';
import type { Search } from './search.js';
import { missed } from './wishes.js';

/** The best box for each leaning; `undefined` where no box that was found meets every wish. */
export function bestBoxes(search: Search, count?: number): (Box | undefined)[] {
  const costs = leanings(search.job)
    .slice(0, count)
    .map(({ weights }) => costByPoints(search.job, weights));
  return explore(search, costs, WITHIN).map((box) => (box !== undefined && missed(box.excess) === 0 ? box : undefined));
}

/** A box that meets every wish, whichever is found first. */
export function anyBox(search: Search): Box | undefined {
  const seen = Float64Array.of(Infinity);
  const [first] = explore(search, [costOfMeeting], WITHIN, seen);
  if (first !== undefined && missed(first.excess) === 0) return first;
  // A box of the lattice that meets every wish may lead to none that can be made, where a better one does. Where none of them
  // does, points rank all boxes as misses do.
  return seen[0] === 0 ? bestBoxes(search, 1)[0] : undefined;
}
