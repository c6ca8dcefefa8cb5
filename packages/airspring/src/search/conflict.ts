import { minimalConflict } from '@airspring/core/numeric';
import { NANOMETRE } from '@airspring/core/quantity';
import type { Wish } from '../kind/wish.js';
import { BEYOND } from './axis.js';
import { costByMiss } from './cost.js';
import { explore } from './explore.js';
import type { Search } from './search.js';

export interface Conflict {
  readonly wishes: readonly Wish[];
  /** Every box has already fallen too far at the end of the band, so that no later beginning of the band helps. */
  readonly fallenAtEnd: boolean;
}

const EDGES = ['width', 'height', 'depth'] as const;

const NEAR_MISS = 0.04;

/** The wishes that a box meets, as bits. */
const metBy = (excess: Float64Array): number => {
  let bits = 0;
  for (let i = 0; i < excess.length; i++) if (excess[i]! <= 0) bits |= 1 << i;
  return bits;
};

/** The wishes for outer edges that every box misses, whatever else it is like: its drivers need more. As bits. */
function missedByAll({ job, variants, wishes: { list } }: Search): number {
  const t = 2 * job.space.panelThickness;
  return EDGES.reduce((bits, edge, axis) => {
    const least = variants.reduce((least, variant) => Math.min(least, variant.least[axis]!), Infinity) + t;
    return least > job.space[edge] + NANOMETRE
      ? bits | (1 << list.findIndex(({ path }) => path === `space.${edge}`))
      : bits;
  }, 0);
}

/**
 * The smallest set of wishes that no box meets together, although each smaller part of it can be met. A search beyond the
 * brief tries each set, unless a box that was found before meets it.
 */
export function conflictOf(search: Search): Conflict {
  const { list } = search.wishes;
  const { lowest, highest } = search.job.wanted;
  const places = [...list.keys()];
  const level = list.findIndex(({ path }) => path === 'wanted.level');
  const depth = list.findIndex(({ path }) => path === 'wanted.lowest');
  /** A wish counts when its bit is set. A wish that only loud play can break counts only together with the wanted level. */
  const asked = (set: number): number[] =>
    places.filter((i) => (set >> i) & 1 && ((set >> level) & 1 || i === level || !list[i]?.easedByLevel));

  const [deepest] = explore(search, [costByMiss([depth])], BEYOND);
  // Where no box can be made at all, no wish is to blame.
  if (deepest === undefined) return { wishes: [], fallenAtEnd: false };
  const fallenAtEnd = deepest.excess[depth]! >= Math.log(highest / lowest);
  const all = (1 << list.length) - 1;
  const met = new Set([metBy(deepest.excess)]);
  const missed = missedByAll(search);
  const known = new Map<number, boolean>();
  const possible = (set: number): boolean => {
    const needs = asked(set);
    const bits = needs.reduce((sum, i) => sum | (1 << i), 0);
    for (const one of met) if ((one & bits) === bits) return true;
    // The search within the brief has found no box that meets every wish.
    if (set === all || (bits & missed) !== 0) return false;
    const told = known.get(bits);
    if (told !== undefined) return told;
    const cost = costByMiss(needs);
    let [box] = explore(search, [cost], BEYOND);
    const miss = box === undefined ? Infinity : cost.of(box.excess, box.criteria);
    // Such a small miss may come from the coarse lattice alone.
    if (miss > 0 && miss < NEAR_MISS) [box] = explore(search, [cost], { ...BEYOND, step: 1, thorough: true });
    if (box !== undefined) met.add(metBy(box.excess));
    const found = box !== undefined && (metBy(box.excess) & bits) === bits;
    known.set(bits, found);
    return found;
  };
  const bitsOf = (set: readonly number[]) => set.reduce((bits, i) => bits | (1 << i), 0);
  const set = minimalConflict(list.length, (some) => possible(bitsOf(some))) ?? [];
  return { wishes: asked(bitsOf(set)).map((i) => list[i] as Wish), fallenAtEnd };
}
