import type { Build } from '../box/build.js';
import type { Job } from '../brief/job.js';
import { costByPoints } from './cost.js';
import { explore } from './explore.js';
import { leanings, missed, points } from './wishes.js';

/** The best build for each set of weights; `undefined` where none that was found meets every wish. */
export function bestBuilds(job: Job, weights: readonly Job['weights'][] = leanings(job)): (Build | undefined)[] {
  const costs = weights.map((one) => costByPoints((criteria) => points(job, one, criteria)));
  return explore(job, costs, { volume: 1, diameter: 1, step: 1 }).map((build) =>
    build !== undefined && missed(build.excess) === 0 ? build : undefined,
  );
}

/** Whether the brief can be met. One set of weights tells, in a third of the time: others choose among boxes that do. */
export const canBeMet = (job: Job): boolean => bestBuilds(job, leanings(job).slice(0, 1))[0] !== undefined;
