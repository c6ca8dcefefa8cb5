import { isInputError } from '@airspring/core/fault';
import { readBrief } from '../brief/read.js';
import type { Written } from '../job/job.js';
import type { Wish } from '../kind/wish.js';
import { bestBoxes } from '../search/best.js';
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

/** A brief with one of its wishes eased by a round step. */
export interface Eased {
  /** The place of the wish among those of the search. */
  readonly wish: number;
  readonly change: Change;
  readonly brief: Written;
  /** So many leanings are searched, the first ones. */
  readonly count: number;
}

/** What the best box of each leaning does; `undefined` where there is none, or where no brief may ask for that. */
export type BestOfEased = readonly (Criteria | undefined)[];

const placeOf = ({ job }: Search, { leaning }: Chosen): number =>
  leanings(job).findIndex(({ name }) => name === leaning);

const binds = ({ box }: Chosen, wish: number): boolean => box.excess[wish]! > -BINDS;

/** The eased briefs of which a design asks what they would gain: one for each wish that is at its limit in any of them. */
export function easedOf(search: Search, chosen: Selection): readonly Eased[] {
  const { job, wishes } = search;
  const count = 1 + Math.max(...chosen.map((one) => placeOf(search, one)));
  return [...wishes.list.entries()].flatMap(([i, wish]): Eased[] => {
    if (!(wish.allowed < Infinity) || isExact(search, wish.path) || !chosen.some((one) => binds(one, i))) return [];
    const change = stepOf(job, wish);
    return [{ wish: i, change, brief: apply(job.written, [change]), count }];
  });
}

/** What is searched again for an eased brief. */
type Again = Pick<Search, 'kinds' | 'models'> & {
  readonly alignments: Search['job']['alignments'];
  readonly shapes: Search['job']['shapes'];
  readonly rooms?: Search['rooms'];
};

/** The best boxes of an eased brief. `rooms` may be those of a search that differs in the sound alone. */
export function bestOfEased({ brief, count }: Pick<Eased, 'brief' | 'count'>, again: Again): BestOfEased {
  const { kinds, models, alignments, shapes, rooms } = again;
  try {
    const search = searchOf(readBrief(brief, kinds, models, alignments, shapes), { kinds, models });
    return bestBoxes(rooms ? { ...search, rooms } : search, count).map((box) => box?.criteria);
  } catch (error) {
    if (!isInputError(error)) throw error;
    return [];
  }
}

/** What each wish at its limit costs each design, from the best boxes of the eased briefs. */
export function pricesTold(
  search: Search,
  chosen: Selection,
  eased: readonly Eased[],
  found: readonly BestOfEased[],
): readonly (readonly WishPrice[])[] {
  const { job, wishes } = search;
  return chosen.map((one) => {
    const place = placeOf(search, one);
    const { weights } = leanings(job)[place]!;
    const points = (criteria: Criteria) => pointsOf(job, weights, criteria);
    const own = one.box.criteria;
    return eased.flatMap(({ wish, change: { from, to } }, k): WishPrice[] => {
      if (found[k]!.length === 0 || !binds(one, wish)) return [];
      const best = found[k]![place] ?? own;
      const better = points(best) > points(own) ? best : own;
      const { path, what } = wishes.list[wish] as Wish;
      return [{ path, what, from, to, with: { ...better }, without: { ...own }, gained: points(better) - points(own) }];
    });
  });
}

/**
 * What each wish at its limit costs each design: the search is done again with that wish eased by a round step. The limits are
 * whole millimetres and whole choices of parts, so that this is a difference over the step and no slope. A box that meets the brief
 * also meets the eased one, so that nothing is ever lost.
 */
export function pricesOf(search: Search, chosen: Selection): readonly (readonly WishPrice[])[] {
  const { kinds, models, job, rooms, progress } = search;
  const eased = easedOf(search, chosen);
  const found = eased.map((one, turn) => {
    progress({ what: 'wish that gives way', count: turn + 1, of: eased.length });
    // The room in a box depends on all but the sound.
    const sameRooms = /^(wanted|amplifier)\./.test(one.change.path);
    return bestOfEased(one, {
      kinds,
      models,
      alignments: job.alignments,
      shapes: job.shapes,
      ...(sameRooms && { rooms }),
    });
  });
  return pricesTold(search, chosen, eased, found);
}
