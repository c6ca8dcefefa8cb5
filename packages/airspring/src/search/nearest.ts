import { decimalText, format, kinds, type Unit } from '@airspring/core/quantity';
import { readBrief } from '../brief/read.js';
import { strictText } from '../brief/spelling.js';
import type { DriverChoice, Job, Written } from '../job/job.js';
import type { Wish } from '../kind/box-kind.js';
import { BEYOND } from './axis.js';
import { canBeMet } from './best.js';
import type { Cost } from './cost.js';
import { coarseCost, explore } from './explore.js';
import { memory, type Search, searchAgain, searchOf } from './search.js';
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
interface Yielding extends Cost {
  readonly down: (excess: Float64Array) => number;
}

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
  const levels = [LEVEL, ...eased];
  const highestBeginning = Math.max(0, Math.log(highest / SHORTEST_BAND / lowest));
  const lowered = (excess: Float64Array, i: number) => Math.max(0, excess[LEVEL]!, excess[i]!);
  const loud = (excess: Float64Array, down: number) => {
    let cost = weights[LEVEL]! * down;
    for (const k of eased) cost += weights[k]! * Math.max(0, excess[k]! - down);
    return cost;
  };
  return {
    of: (excess) => {
      if (excess[LOWEST]! > highestBeginning) return Infinity;
      let cost = 0;
      for (const i of fixed) cost += weights[i]! * Math.max(0, excess[i]!);
      let least = Infinity;
      for (const i of levels) least = Math.min(least, loud(excess, lowered(excess, i)));
      return cost + least;
    },
    down: (excess) =>
      levels
        .map((i) => lowered(excess, i))
        .reduce((best, down) => (loud(excess, down) < loud(excess, best) ? down : best)),
    slack: 0.02,
    least: 0,
  };
}

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

/** By how much one wish must yield when every other wish is met. */
function leastYield(search: Search, path: string): number {
  const { list } = search.wishes;
  const index = placeOf(search, path);
  const yields = [...list.keys()].filter(
    (i) => i === index || (path === 'wanted.level' && list[i]?.easedByLevel === true),
  );
  const rest = [...list.keys()].filter((i) => !yields.includes(i));
  const over = (excess: Float64Array) => yields.reduce((most, i) => Math.max(most, excess[i]!), 0);
  const others = (excess: Float64Array) => rest.reduce((sum, i) => sum + Math.max(0, excess[i]!), 0);
  const cost: Cost = { of: (excess) => 1e3 * others(excess) + over(excess), slack: 0.02, least: 0 };
  const [best] = explore(search, [cost], BEYOND);
  return best === undefined || others(best.excess) > 0 ? Infinity : over(best.excess);
}

interface Yielded {
  /** How many steps higher the band begins. */
  readonly rung: number;
  readonly excess: Float64Array;
  readonly down: number;
  readonly cost: number;
}

/** Ratio of each beginning of the band that is tried to the one before. */
const HIGHER = 1.1;

/** The box for which the wishes yield least when the band begins so many steps higher, if it costs at most about this much. */
function yieldedAt(search: Search, rung: number, step: number, most: number): Yielded | undefined {
  const { job } = search;
  const ratio = HIGHER ** rung;
  const shorter = searchAgain(search, { ...job, wanted: { ...job.wanted, lowest: job.wanted.lowest * ratio } });
  const lowest = placeOf(search, 'wanted.lowest');
  const higher = weightOf(job, search.wishes.list[lowest] as Wish) * Math.log(ratio);
  const yielding = yieldingOf(shorter);
  const scope = { ...BEYOND, step, thorough: step === 1 };
  const [box] = explore(shorter, [{ ...yielding, most: most - higher }], scope);
  if (box === undefined) return undefined;
  const excess = Float64Array.from(box.excess);
  if (ratio > 1) excess[lowest] = Math.max(0, excess[lowest]!) + Math.log(ratio);
  return { rung, excess, down: yielding.down(box.excess), cost: yielding.of(box.excess, box.criteria) + higher };
}

/** A fine lattice seldom makes a box cheaper by more than this. */
const FINER = 0.05;
/** Number of beginnings, the best on a coarse lattice, that are tried again on a fine one. */
const LOOKED_AT = 3;

/**
 * The box for which the wishes yield least. A band that begins higher costs depth but asks far less of travel and air. A
 * coarse lattice finds which beginnings may pay: first every other one is tried, then those beside the best. A fine lattice
 * finds the box.
 */
function yieldedLeast(search: Search): Yielded | undefined {
  const { job } = search;
  const { lowest, highest } = job.wanted;
  const weight = weightOf(job, search.wishes.list[placeOf(search, 'wanted.lowest')] as Wish);
  const found: Yielded[] = [];
  const least = () => Math.min(...found.map(({ cost }) => cost));
  const cheapest = () => found.filter(({ cost }) => cost <= least() + FINER).sort((a, b) => a.cost - b.cost);
  const look = (rung: number, step: number, most: number) => {
    const one = yieldedAt(search, rung, step, most);
    if (one !== undefined) found.push(one);
  };
  // No box can win back what the higher beginning itself costs.
  const pays = (rung: number) =>
    lowest * HIGHER ** rung < highest / SHORTEST_BAND && weight * rung * Math.log(HIGHER) < least();
  for (let rung = 0; rung === 0 || pays(rung); rung += 2) look(rung, BEYOND.step, Infinity);
  const [best] = cheapest();
  if (best === undefined) return undefined;
  for (const rung of [best.rung - 1, best.rung + 1])
    if (rung > 0 && pays(rung)) look(rung, BEYOND.step, least() + FINER);
  for (const { rung } of cheapest().slice(0, LOOKED_AT)) look(rung, 1, least());
  return cheapest()[0];
}

/** With more choices of drivers than this, only the most promising ones are searched for the nearest brief. */
const LIKELIEST = 5;
/** A band that begins higher mostly costs less, so that the highest beginning comes first and cuts the others short. */
const LATER = [1.6, 1.25, 1];

/** The places of the choices of drivers to which the wishes yield least in a coarse look, for a band that begins here or higher. */
function likeliest(search: Search): number[] {
  const { job } = search;
  const places = [...job.choices.keys()];
  if (places.length <= LIKELIEST) return places;
  const least = places.map(() => Infinity);
  // A choice dearer than as many others as are kept need not be looked at to its end.
  const most = () => [...least].sort((a, b) => a - b)[LIKELIEST - 1]!;
  for (const ratio of LATER) {
    const lowest = job.wanted.lowest * ratio;
    if (lowest >= job.wanted.highest / SHORTEST_BAND) continue;
    const shorter = searchAgain(search, { ...job, wanted: { ...job.wanted, lowest } });
    const yielding = yieldingOf(shorter);
    job.choices.forEach((choice, place) => {
      search.progress({ what: 'choice of drivers', count: place + 1, of: places.length });
      const cost = { ...yielding, most: Math.min(most(), least[place]!) - Math.log(ratio) };
      least[place] = Math.min(least[place]!, coarseCost(shorter, choice, cost, BEYOND) + Math.log(ratio));
    });
  }
  return places
    .sort((a, b) => least[a]! - least[b]!)
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
  // The room in a box depends on all but the sound.
  const roomsOf = memory((_: string): Search['rooms'] => new Map());
  const again = (brief: Written): Search => ({
    ...searchOf(some(readBrief(brief, whole.kinds)), whole.kinds, whole.progress),
    rooms: roomsOf(JSON.stringify({ ...brief, wanted: undefined, amplifier: undefined })),
  });
  const search = again(whole.job.written);
  const best = yieldedLeast(search);
  if (best === undefined) return undefined;
  const { excess, down } = best;
  const { list } = search.wishes;
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
