import { completeOptions } from '../kind/brief-options.js';
import { type BestOfEased, bestOfEased, type Eased } from '../record/prices.js';
import type { Chunk } from './chunk.js';

/** Searches for the best boxes of a brief with one wish eased. */
export const easedWish: Chunk<Pick<Eased, 'brief' | 'count'>, BestOfEased> = {
  name: 'wish that gives way',
  work: (eased, options) => bestOfEased(eased, completeOptions(options)),
};
