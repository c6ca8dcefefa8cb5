import { type Criteria, type Excess, missed } from './wishes.js';

/** What one search minimises: a cost for a box's excesses and criteria, given at each cell of the lattice. */
export type Cost = (excess: Excess, criteria: Criteria) => number;

/** Cost of a box that must meet every wish: what it misses first, then its points. */
export const costByPoints =
  (score: (criteria: Criteria) => number): Cost =>
  (excess, criteria) => {
    const miss = missed(excess);
    return miss > 0 ? 1e3 * (1 + miss) : -score(criteria);
  };
