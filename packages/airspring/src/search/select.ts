import type { Box } from './box.js';
import { type Criteria, leanings } from './points.js';
import type { Search } from './search.js';

/** How far a design must lead in what its name claims: Hz, dB, a share of the volume, a share of the work. */
const LEADS = { depth: 1, level: 1, volume: 0.05, effort: 0.1 } as const;

/** How far two designs must differ in at least one respect, so that the reader has a real choice. */
const APART = { depth: 2, level: 1.5, volume: 0.1 } as const;

/** A box, and what it is best at. */
export interface Chosen {
  readonly box: Box;
  readonly leaning: string;
}

/** The designs of a brief that can be met: there is always a first one. */
export type Selection = readonly [first: Chosen, ...others: Chosen[]];

/** By how much one box leads another in what a leaning claims; the first leaning claims nothing. */
const leads: Readonly<Record<string, (mine: Criteria, other: Criteria) => boolean>> = {
  deeper: (mine, other) => other.depth - mine.depth >= LEADS.depth,
  louder: (mine, other) => mine.level - other.level >= LEADS.level,
  smaller: (mine, other) => 1 - mine.volume / other.volume >= LEADS.volume,
  simpler: (mine, other) => mine.effort <= (1 - LEADS.effort) * other.effort && other.effort > 0,
};
/** Whether another box is better in what a leaning claims, by however little. */
const trails: Readonly<Record<string, (mine: Criteria, other: Criteria) => boolean>> = {
  deeper: (mine, other) => mine.depth > other.depth + 0.1,
  louder: (mine, other) => mine.level < other.level - 0.1,
  smaller: (mine, other) => mine.volume > 1.005 * other.volume,
  simpler: (mine, other) => mine.effort > 1.005 * other.effort,
};

/** Whether one box is at least as good in every respect and better in one. */
const dominates = (a: Criteria, b: Criteria): boolean =>
  a.depth <= b.depth &&
  a.level >= b.level &&
  a.volume <= b.volume &&
  a.effort <= b.effort &&
  (a.depth < b.depth || a.level > b.level || a.volume < b.volume || a.effort < b.effort);

const differ = (a: Criteria, b: Criteria): boolean =>
  Math.abs(a.depth - b.depth) >= APART.depth ||
  Math.abs(a.level - b.level) >= APART.level ||
  Math.abs(a.volume / b.volume - 1) >= APART.volume;

/**
 * The best box of each leaning, in that order, without boxes that another one beats or that are too like an earlier one. A
 * leaning is claimed only where its own number leads the first design by the stated difference, and no other design is better
 * in it.
 */
export function select({ job }: Search, boxes: readonly (Box | undefined)[]): Selection | undefined {
  const names = leanings(job).map(({ name }) => name);
  const found = boxes.flatMap((box, i): Chosen[] => (box === undefined ? [] : [{ box, leaning: names[i] as string }]));
  const [best, ...rest] = found;
  if (best === undefined) return undefined;
  // The first design claims nothing, whichever leaning has found it.
  const first: Chosen = { box: best.box, leaning: names[0] as string };
  const chosen = [first];
  for (const next of rest) {
    const { criteria } = next.box;
    const rivals = found.filter(({ box }) => box !== next.box).map(({ box }) => box.criteria);
    if (rivals.some((rival) => dominates(rival, criteria))) continue;
    if (!leads[next.leaning]?.(criteria, first.box.criteria)) continue;
    if (!chosen.every(({ box }) => differ(criteria, box.criteria))) continue;
    chosen.push(next);
  }
  // No other design that is shown may be better in what a name claims.
  const others = chosen
    .slice(1)
    .filter(({ box, leaning }) =>
      chosen.every((other) => other.box === box || !trails[leaning]?.(box.criteria, other.box.criteria)),
    );
  return [first, ...others];
}
