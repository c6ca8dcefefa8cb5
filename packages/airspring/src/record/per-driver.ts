import { format } from '@airspring/core/quantity';
import type { DriverChoice } from '../job/job.js';
import type { Wish } from '../kind/wish.js';
import { WITHIN } from '../search/axis.js';
import { bestBoxes } from '../search/best.js';
import type { Box } from '../search/box.js';
import { conflictOf } from '../search/conflict.js';
import { costByPoints } from '../search/cost.js';
import { coarseCost } from '../search/explore.js';
import { pointsOf } from '../search/points.js';
import { type Search, searchOf } from '../search/search.js';
import { isEndOfSearch } from './behind-filter.js';

/** The balanced best box of one driver, or why it has none. */
export type DriverVerdict = DriverServes | DriverFails;

interface DriverHead {
  readonly name: string;
  /** Its place in the brief's list of drivers. */
  readonly driverIndex: number;
}

export interface DriverServes extends DriverHead {
  readonly ok: true;
  readonly count: number;
  readonly called: string;
  readonly outer: readonly [width: number, height: number, depth: number];
  readonly volume: number;
  readonly depth: number;
  /** Set where that is only the lowest frequency that was looked at. */
  readonly endOfSearch?: true;
  readonly level: number;
  /** Work beyond the box, as metres of vent to print. */
  readonly effort: number;
  readonly points: number;
}

export interface DriverFails extends DriverHead {
  readonly ok: false;
  readonly because: string;
}

/** With more drivers than this, only the most promising ones are searched to the end. */
const MOST = 5;

/** A wish as words and a number. */
export const wishText = ({ what, sense, quantity, allowed, unit }: Wish): string =>
  `${what} ${sense} ${format(quantity, allowed, unit as never, 4)}`;

/** The best box of each driver of a brief, the best driver first and those without a box last; empty for a brief with one driver. */
export function perDriverOf(search: Search, first: Box): readonly DriverVerdict[] {
  const { job } = search;
  const indices = [...new Set(job.choices.map(({ driverIndex }) => driverIndex))];
  if (indices.length < 2) return [];
  const full = likeliest(search, indices, first.variant.choice.driverIndex);
  const verdicts = indices.map((driverIndex, i): DriverVerdict => {
    search.progress({ what: 'driver', count: i + 1, of: indices.length });
    const choices = job.choices.filter((choice) => choice.driverIndex === driverIndex);
    const { name } = choices[0] as DriverChoice;
    if (driverIndex === first.variant.choice.driverIndex) return served(search, { name, driverIndex }, first);
    if (!full.has(driverIndex)) {
      return { ok: false, name, driverIndex, because: `A coarse search puts it after ${MOST} other drivers.` };
    }
    const alone = searchOf({ ...job, choices }, search);
    const [box] = bestBoxes(alone, 1);
    return box ? served(search, { name, driverIndex }, box) : { ok: false, name, driverIndex, because: reason(alone) };
  });
  const rank = (one: DriverVerdict) => (one.ok ? -one.points : Infinity);
  return verdicts.sort((a, b) => rank(a) - rank(b));
}

/** The drivers that come first in a coarse look, and in any case the one of the first design. */
function likeliest(search: Search, indices: readonly number[], first: number): ReadonlySet<number> {
  if (indices.length <= MOST) return new Set(indices);
  const { job } = search;
  const cost = costByPoints(job, job.weights);
  const costs = job.choices.map((choice) => coarseCost(search, choice, cost, WITHIN));
  const least = (index: number) =>
    Math.min(...job.choices.map(({ driverIndex }, i) => (driverIndex === index ? costs[i]! : Infinity)));
  const ranked = [...indices].sort((a, b) => least(a) - least(b));
  return new Set([first, ...ranked.slice(0, MOST)]);
}

const served = ({ job }: Search, head: DriverHead, { variant, edges, criteria }: Box): DriverServes => ({
  ok: true,
  ...head,
  count: variant.choice.drivers.count,
  called: variant.kind.called,
  outer: edges,
  volume: criteria.volume,
  depth: criteria.depth,
  ...(isEndOfSearch(criteria.depth, job.wanted) && { endOfSearch: true as const }),
  level: criteria.level,
  effort: criteria.effort,
  points: pointsOf(job, job.weights, criteria),
});

function reason(search: Search): string {
  const [unsuited] = search.unsuited;
  if (search.variants.length === 0 && unsuited !== undefined) return `${unsuited.because}.`;
  const { wishes } = conflictOf(search);
  if (wishes.length === 0) return 'No box of the allowed kinds has room for it.';
  const named = wishes.map(wishText).join('; ');
  return wishes.length === 1
    ? `No box with it meets this wish: ${named}.`
    : `With it, these wishes conflict: ${named}.`;
}
