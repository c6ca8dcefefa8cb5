import { isInputError } from '@airspring/core/fault';
import { readBrief } from '../brief/read.js';
import type { Written } from '../job/job.js';
import type { Wish } from '../kind/box-kind.js';
import { bestBoxes } from '../search/best.js';
import type { Box } from '../search/box.js';
import { apply, type Change, stepOf } from '../search/change.js';
import { type Criteria, leanings, pointsOf } from '../search/points.js';
import { type Search, searchOf } from '../search/search.js';
import type { Chosen, Selection } from '../search/select.js';

/** A wish is at its limit when the design is nearer than this to it. */
export const BINDS = 0.005;

/** What one wish costs a design: the best box of the same leaning, once the wish gives way a little and all others stay. */
export interface WishPrice {
  readonly path: string;
  readonly what: string;
  /** The limit as the brief writes it, and one step wider. */
  readonly from: string;
  readonly to: string;
  /** What that box does, and what the design does: Hz, dB, m³, metres of vent to print. */
  readonly with: Criteria;
  readonly without: Criteria;
  /** How many points that box has more, by the leaning of the design. */
  readonly gained: number;
}

/** Edges that must be as long as the space change with it; they do not give way. */
const isExact = ({ job }: Search, path: string): boolean => job.space.exactly.some((edge) => path === `space.${edge}`);

/** The search of a brief with one wish changed; `undefined` where no brief may ask for that. */
function searchWith(search: Search, change: Change): Search | undefined {
  const { job, kinds, models } = search;
  const brief: Written = apply(job.written, [change]);
  try {
    const again = searchOf(readBrief(brief, kinds, models, job.alignments), search);
    // The room in a box depends on all but the sound.
    return /^(wanted|amplifier)\./.test(change.path) ? { ...again, rooms: search.rooms } : again;
  } catch (error) {
    if (!isInputError(error)) throw error;
    return undefined;
  }
}

/**
 * What each wish at its limit costs each design: the search is done again with that wish eased by a round step. The limits are
 * whole millimetres and whole choices of parts, so that this is a difference over the step and no slope. A box that meets the brief
 * also meets the eased one, so that nothing is ever lost.
 */
export function pricesOf(search: Search, chosen: Selection): readonly (readonly WishPrice[])[] {
  const { job, wishes, progress } = search;
  const names = leanings(job);
  const place = ({ leaning }: Chosen): number => names.findIndex(({ name }) => name === leaning);
  const count = 1 + Math.max(...chosen.map(place));
  const binds = ({ excess }: Box, i: number): boolean => excess[i]! > -BINDS;
  const binding = [...wishes.list.keys()].filter(
    (i) =>
      wishes.list[i]!.allowed < Infinity &&
      !isExact(search, wishes.list[i]!.path) &&
      chosen.some(({ box }) => binds(box, i)),
  );
  const eased = new Map<number, readonly (Box | undefined)[]>();
  const changes = new Map<number, Change>();
  binding.forEach((i, turn) => {
    progress({ what: 'wish that gives way', count: turn + 1, of: binding.length });
    const change = stepOf(job, wishes.list[i] as Wish);
    const again = searchWith(search, change);
    if (again === undefined) return;
    changes.set(i, change);
    eased.set(i, bestBoxes(again, count));
  });
  return chosen.map((one) => {
    const { weights } = names[place(one)]!;
    const points = (criteria: Criteria) => pointsOf(job, weights, criteria);
    const own = one.box.criteria;
    return [...eased].flatMap(([i, boxes]): WishPrice[] => {
      if (!binds(one.box, i)) return [];
      const found = boxes[place(one)]?.criteria ?? own;
      const better = points(found) > points(own) ? found : own;
      const { path, what } = wishes.list[i] as Wish;
      const { from, to } = changes.get(i) as Change;
      return [{ path, what, from, to, with: { ...better }, without: { ...own }, gained: points(better) - points(own) }];
    });
  });
}
