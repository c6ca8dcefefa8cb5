import { minimalConflict } from '@airspring/core/numeric';
import type { Job } from '../brief/job.js';
import { explore } from './explore.js';
import { BEYOND } from './lattice.js';
import { roomsOf } from './room.js';
import { CURRENT, type Excess, LEVEL, LOWEST, SPEED, VOLTAGE, wishes } from './wishes.js';

/** Limits that only matter when a level is asked for: played softly enough, every box keeps them. */
const LOUD_ONLY = [SPEED, VOLTAGE, CURRENT];

/** A wish counts as asked when its bit is set; without the level, what only loud play needs is not asked either. */
const asked = (set: number): number[] =>
  [...wishes.keys()].filter((i) => {
    const loud = (set >> LEVEL) & 1;
    return (set >> i) & 1 && (loud || !LOUD_ONLY.includes(i));
  });

/** Wishes met by a box, as bits. */
const metBy = (excess: Excess): number => {
  let bits = 0;
  for (let i = 0; i < excess.length; i++) if ((excess[i] as number) <= 0) bits |= 1 << i;
  return bits;
};

export interface Conflict {
  /** Places in the list of wishes. */
  readonly wishes: readonly number[];
  /** Every box has fallen too far at the end of the band already: then no later beginning helps. */
  readonly fallenAtEnd: boolean;
}

/**
 * The smallest set of wishes that no box meets together, although each smaller part of it can be met. First by all boxes of
 * a lattice that reaches beyond the brief; the answer is then tried by a search in whole millimetres for just these wishes.
 */
export function conflictOf(job: Job): Conflict {
  const rooms = roomsOf(job);
  const met = new Set<number>();
  const wholeBand = Math.log(job.wanted.highest / job.wanted.lowest);
  let fallenAtEnd = true;
  const visit = (excess: Excess) => {
    met.add(metBy(excess));
    if ((excess[LOWEST] as number) < wholeBand) fallenAtEnd = false;
  };
  explore(job, [], BEYOND, visit, rooms);
  const searched = new Map<number, boolean>();
  const possible = (set: number): boolean => {
    const needs = asked(set);
    const bits = needs.reduce((sum, i) => sum | (1 << i), 0);
    for (const one of met) if ((one & bits) === bits) return true;
    let known = searched.get(bits);
    if (known === undefined) {
      const miss = (excess: Excess) => needs.reduce((sum, i) => sum + Math.max(0, excess[i] as number), 0);
      const [best] = explore(job, [miss], BEYOND, undefined, rooms);
      known = best !== undefined && miss(best.excess) === 0;
      searched.set(bits, known);
    }
    return known;
  };
  // Where no box stands at all no wish is to blame.
  if (!possible(0)) return { wishes: [], fallenAtEnd: false };
  const bitsOf = (set: readonly number[]) => set.reduce((bits, i) => bits | (1 << i), 0);
  const set = minimalConflict(wishes.length, (set) => possible(bitsOf(set))) ?? [];
  return { wishes: asked(bitsOf(set)), fallenAtEnd };
}
