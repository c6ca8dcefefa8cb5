import { decimalText, format, kinds, type Unit } from '@airspring/core/quantity';
import { readBrief } from '../brief/read.js';
import { strictText } from '../brief/spelling.js';
import type { DriverChoice, Job, Written } from '../job/job.js';
import type { Wish } from '../kind/box-kind.js';
import { BEYOND } from './axis.js';
import { canBeMet } from './best.js';
import type { Cost } from './cost.js';
import { costByChoice, explore } from './explore.js';
import { type Search, searchAgain, searchOf } from './search.js';
import { neededFor } from './wishes.js';

/** One wish that yields: its path, and how it reads before and after. */
export interface Change {
  readonly path: string;
  readonly from: string;
  readonly to: string;
}

/** A wish weighs 1 where the brief has no weight for it. No wish weighs nothing, or it would yield without end. */
const weightOf = (job: Job, { weight }: Wish): number =>
  weight === undefined ? 1 : Math.max(0.05, job.weights[weight]);

const placeOf = ({ wishes }: Search, path: string): number => wishes.list.findIndex((wish) => wish.path === path);

/** Least ratio of the end of a band to its beginning. */
const SHORTEST_BAND = 1.2;

/** What a box costs when wishes yield to it, and by how much the level is lowered for that. */
type Yielding = (excess: Float64Array) => { readonly cost: number; readonly down: number };

/**
 * Each missed wish costs its relative excess times its weight. A lower level eases other wishes as well, so the cost is taken
 * at the best of the few levels at which one of them is just met.
 */
function yieldingOf(search: Search): Yielding {
  const { job, wishes } = search;
  const { lowest, highest } = job.wanted;
  const [LOWEST, LEVEL] = [placeOf(search, 'wanted.lowest'), placeOf(search, 'wanted.level')];
  const weights = wishes.list.map((wish) => weightOf(job, wish));
  const eased = [...wishes.list.keys()].filter((i) => wishes.list[i]?.easedByLevel && i !== LEVEL);
  const fixed = [...wishes.list.keys()].filter((i) => i !== LEVEL && !eased.includes(i));
  const highestBeginning = Math.max(0, Math.log(highest / SHORTEST_BAND / lowest));
  return (excess) => {
    if (excess[LOWEST]! > highestBeginning) return { cost: Infinity, down: 0 };
    let cost = 0;
    for (const i of fixed) cost += weights[i]! * Math.max(0, excess[i]!);
    const least = Math.max(0, excess[LEVEL]!);
    let best = { cost: Infinity, down: least };
    for (const i of [LEVEL, ...eased]) {
      const down = Math.max(least, excess[i]!);
      let loud = weights[LEVEL]! * down;
      for (const k of eased) loud += weights[k]! * Math.max(0, excess[k]! - down);
      if (loud < best.cost) best = { cost: loud, down };
    }
    return { cost: cost + best.cost, down: best.down };
  };
}

const costByYielding = (yielding: Yielding): Cost => ({
  of: (excess) => yielding(excess).cost,
  slack: 0.02,
  least: 0,
});

/** A number in the unit of a text, rounded outwards to a round step. */
function rounded(value: number, unit: string, outwards: 1 | -1): string {
  const step =
    unit === 'mm'
      ? 1
      : unit === 'cm' || unit === 'm/s' || unit === 'dB' || unit === 'Hz' || unit === 'V' || unit === 'L'
        ? 0.1
        : 0.01;
  const count = outwards > 0 ? Math.ceil(value / step - 1e-9) : Math.floor(value / step + 1e-9);
  return `${decimalText(count * step, 8)} ${unit}`;
}

const at = (brief: Written, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], brief);

const put = (brief: Written, path: string, value: string): Written => {
  const [section, field] = path.split('.') as [string, string];
  return { ...brief, [section]: { ...(brief[section] as object), [field]: value } };
};

/** One wish moved outwards by an excess and a margin, in the unit the brief is written in. */
function changeOf({ job }: Search, wish: Wish, over: number, margin: number): Change {
  const { path, quantity, allowed, unit: usual, sense } = wish;
  const value = neededFor(wish, over + margin);
  const written = at(job.written, path);
  const strict = typeof written === 'string' ? strictText(quantity, written) : undefined;
  const unit = strict?.split(' ')[1] ?? usual;
  const [scale, offset] = (kinds[quantity].units as Record<string, Unit>)[unit] as Unit;
  const to = rounded((value - offset) / scale, unit, sense === 'at least' ? -1 : 1);
  const before = typeof written === 'string' ? written : `${format(quantity, allowed, usual as never, 4)} (default)`;
  return { path, from: before, to };
}

const apply = (brief: Written, changes: readonly Change[]): Written =>
  changes.reduce((changed, { path, to }) => put(changed, path, to), brief);

/** By how much one wish must yield when every other wish is met. The job is read again with its space, so no rooms are shared. */
function leastYield(search: Search, path: string): number {
  const { list } = search.wishes;
  const index = placeOf(search, path);
  const yields = [...list.keys()].filter(
    (i) => i === index || (path === 'wanted.level' && list[i]?.easedByLevel === true),
  );
  const rest = [...list.keys()].filter((i) => !yields.includes(i));
  const over = (excess: Float64Array) => Math.max(0, ...yields.map((i) => excess[i]!));
  const others = (excess: Float64Array) => rest.reduce((sum, i) => sum + Math.max(0, excess[i]!), 0);
  const cost: Cost = { of: (excess) => 1e3 * others(excess) + over(excess), slack: 0.02, least: 0 };
  const [best] = explore(search, [cost], BEYOND);
  return best === undefined || others(best.excess) > 0 ? Infinity : over(best.excess);
}

interface Yielded {
  readonly excess: Float64Array;
  readonly down: number;
  readonly cost: number;
}

/** The box for which the wishes yield least when the band begins so many times higher. */
function yieldedAt(search: Search, ratio: number, step: number): Yielded | undefined {
  const { job } = search;
  const shorter = searchAgain(search, { ...job, wanted: { ...job.wanted, lowest: job.wanted.lowest * ratio } });
  const yielding = yieldingOf(shorter);
  const [box] = explore(shorter, [costByYielding(yielding)], { ...BEYOND, step, thorough: step === 1 });
  if (box === undefined) return undefined;
  const { down, cost } = yielding(box.excess);
  const excess = Float64Array.from(box.excess);
  const lowest = placeOf(search, 'wanted.lowest');
  if (ratio > 1) excess[lowest] = Math.max(0, excess[lowest]!) + Math.log(ratio);
  return { excess, down, cost: cost + weightOf(job, search.wishes.list[lowest] as Wish) * Math.log(ratio) };
}

/** Ratio of each beginning of the band that is tried to the one before. */
const HIGHER = 1.1;
/** Number of beginnings, the best on a coarse lattice, that are tried again on a fine one. */
const LOOKED_AT = 3;

/**
 * The box for which the wishes yield least. A band that begins higher costs depth but asks far less of travel and air. A
 * coarse lattice finds which beginnings may pay; a fine lattice finds the box.
 */
function yieldedLeast(search: Search): Yielded | undefined {
  const { job } = search;
  const { lowest, highest } = job.wanted;
  const weight = weightOf(job, search.wishes.list[placeOf(search, 'wanted.lowest')] as Wish);
  const coarse: (Yielded & { ratio: number })[] = [];
  let least = Infinity;
  // No box can win back what the higher beginning itself costs.
  const pays = (ratio: number) => lowest * ratio < highest / SHORTEST_BAND && weight * Math.log(ratio) < least;
  for (let ratio = 1; ratio === 1 || pays(ratio); ratio *= HIGHER) {
    const found = yieldedAt(search, ratio, BEYOND.step);
    if (found === undefined) continue;
    coarse.push({ ratio, ...found });
    least = Math.min(least, found.cost);
  }
  const cheapest = (list: readonly Yielded[]) => [...list].sort((a, b) => a.cost - b.cost);
  const fine = (cheapest(coarse).slice(0, LOOKED_AT) as typeof coarse).flatMap(({ ratio, ...found }) => [
    yieldedAt(search, ratio, 1) ?? found,
    found,
  ]);
  return cheapest(fine)[0];
}

/** With more choices of drivers than this, only the most promising ones are searched for the nearest brief. */
const LIKELIEST = 5;
const LATER = [1, 1.25, 1.6];

/** The places of the choices of drivers to which the wishes yield least in a coarse look, for a band that begins here or higher. */
function likeliest(search: Search): number[] {
  const { job } = search;
  const places = [...job.choices.keys()];
  if (places.length <= LIKELIEST) return places;
  const costs = LATER.filter((ratio) => job.wanted.lowest * ratio < job.wanted.highest / SHORTEST_BAND).map((ratio) => {
    const shorter = searchAgain(search, { ...job, wanted: { ...job.wanted, lowest: job.wanted.lowest * ratio } });
    return costByChoice(shorter, costByYielding(yieldingOf(shorter)), BEYOND).map((cost) => cost + Math.log(ratio));
  });
  const least = (place: number) => Math.min(...costs.map((list) => list[place]!));
  return places
    .sort((a, b) => least(a) - least(b))
    .slice(0, LIKELIEST)
    .sort((a, b) => a - b);
}

/**
 * The nearest brief that can be met: the weighted sum of the relative changes is the least that was found. Changes grow until
 * they suffice. Then each is left out or made smaller as far as possible, since one change can spare another: a shorter band,
 * for example, needs less level.
 */
export function nearestBrief(whole: Search): { brief: Written; changes: Change[] } | undefined {
  const places = likeliest(whole);
  const some = (job: Job): Job => ({ ...job, choices: places.map((place) => job.choices[place] as DriverChoice) });
  const search = searchOf(some(whole.job), whole.kinds, whole.progress);
  const best = yieldedLeast(search);
  if (best === undefined) return undefined;
  const { excess, down } = best;
  const { list } = search.wishes;
  const again = (brief: Written) => searchOf(some(readBrief(brief, search.kinds)), search.kinds, search.progress);
  const met = (brief: Written) => canBeMet(again(brief));
  /** What is left of an excess when the level is lowered. */
  const overOf = (wish: Wish, i: number) =>
    wish.path === 'wanted.level' ? down : excess[i]! - (wish.easedByLevel ? down : 0);
  for (let margin = 0.002; margin < 0.3; margin *= 3) {
    const all = list.flatMap((wish, i) => {
      const over = overOf(wish, i);
      return over > 0 ? [{ wish, over, change: changeOf(search, wish, over, margin) }] : [];
    });
    let kept = all;
    const brief = (some: typeof all) =>
      apply(
        search.job.written,
        some.map(({ change }) => change),
      );
    if (!met(brief(kept))) continue;
    for (const one of all) {
      const without = kept.filter((other) => other !== one);
      if (without.length > 0 && met(brief(without))) kept = without;
    }
    for (const { wish, over: before } of [...kept]) {
      const over = leastYield(again(brief(kept.filter((other) => other.wish !== wish))), wish.path);
      if (over >= before) continue;
      const change = changeOf(search, wish, over, margin);
      const smaller = kept.map((other) => (other.wish === wish ? { wish, over, change } : other));
      if (met(brief(smaller))) kept = smaller;
    }
    return { brief: brief(kept), changes: kept.map(({ change }) => change) };
  }
  return undefined;
}
