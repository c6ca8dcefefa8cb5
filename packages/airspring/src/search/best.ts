import { WITHIN } from './axis.js';
import type { Box } from './box.js';
import { costByPoints } from './cost.js';
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

/** Whether the brief can be met. One set of weights is enough to tell: other weights only choose among boxes that meet it. */
export const canBeMet = (search: Search): boolean => bestBoxes(search, 1)[0] !== undefined;
