import { decimalText, kinds, type Unit } from '@airspring/core/quantity';
import type { Job } from '../brief/job.js';
import { readBrief } from '../brief/read.js';
import type { Brief } from '../brief/schema.js';
import { needed, wishValue } from '../report/margins.js';
import { canBeMet } from './best.js';
import { explore } from './explore.js';
import { BEYOND } from './lattice.js';
import { roomsOf } from './room.js';
import { CURRENT, type Excess, LEVEL, LOWEST, SPEED, VOLTAGE, wishes } from './wishes.js';

/** One wish that yields: its path, and how it reads before and after. */
export interface Change {
  readonly path: string;
  readonly from: string;
  readonly to: string;
}

/** Wishes weigh 1 where the brief has no weight for them; none weighs nothing, or it would yield without end. */
const weightOf = (job: Job, index: number): number => {
  const name = wishes[index]?.weight;
  return name === undefined ? 1 : Math.max(0.05, job.weights[name]);
};

/** A band ends at least so many times higher than it begins. */
const SHORTEST_BAND = 1.2;

/**
 * What a box costs when wishes yield to it: each missed wish by its relative excess times its weight. A lower level helps
 * air speed, voltage and current as well: the best of the few levels at which one of them just stops being missed.
 */
function yielding(job: Job, excess: Excess): { cost: number; down: number } {
  if ((excess[LOWEST] as number) > Math.max(0, Math.log(job.wanted.highest / SHORTEST_BAND / job.wanted.lowest))) {
    return { cost: Infinity, down: 0 };
  }
  let fixed = 0;
  for (let i = 0; i < excess.length; i++) {
    if (i === LEVEL || i === SPEED || i === VOLTAGE || i === CURRENT) continue;
    fixed += weightOf(job, i) * Math.max(0, excess[i] as number);
  }
  const least = Math.max(0, excess[LEVEL] as number);
  let best = { cost: Infinity, down: least };
  for (const i of [LEVEL, SPEED, VOLTAGE, CURRENT]) {
    const down = Math.max(least, excess[i] as number);
    let cost = weightOf(job, LEVEL) * down;
    for (const k of [SPEED, VOLTAGE, CURRENT]) cost += weightOf(job, k) * Math.max(0, (excess[k] as number) - down);
    if (cost < best.cost) best = { cost, down };
  }
  return { cost: fixed + best.cost, down: best.down };
}

/** A number in the unit of a text, rounded outwards to a step that people write. */
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

const at = (brief: Brief, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], brief);

const put = (brief: Brief, path: string, value: string): Brief => {
  const [section, field] = path.split('.') as [keyof Brief, string];
  return { ...brief, [section]: { ...(brief[section] as object), [field]: value } };
};

/** One wish moved outwards by an excess and a margin, in the unit the brief is written in. */
function changeOf(job: Job, index: number, over: number, margin: number): Change {
  const { path } = wishes[index] as (typeof wishes)[number];
  const { kind, text, allowed, unit: usual } = wishValue(job, index);
  const value = needed(job, index, new Float64Array(wishes.length).fill(over + margin));
  const written = at(job.brief, path);
  const unit = typeof written === 'string' ? (written.split(' ')[1] as string) : usual;
  const [scale, offset] = (kinds[kind].units as Record<string, Unit>)[unit] as Unit;
  const to = rounded((value - offset) / scale, unit, index === LEVEL ? -1 : 1);
  return { path, from: typeof written === 'string' ? written : `${text(allowed)} (default)`, to };
}

const apply = (brief: Brief, changes: readonly Change[]): Brief =>
  changes.reduce((changed, { path, to }) => put(changed, path, to), brief);

/** By how much one wish must yield when every other one is met. Such a job is read anew, its space too: no rooms to share. */
function leastYield(job: Job, index: number): number {
  const yields = index === LEVEL ? [LEVEL, SPEED, VOLTAGE, CURRENT] : [index];
  const over = (excess: Excess) => Math.max(0, ...yields.map((i) => excess[i] as number));
  const rest = [...wishes.keys()].filter((i) => !yields.includes(i));
  const others = (excess: Excess) => rest.reduce((sum, i) => sum + Math.max(0, excess[i] as number), 0);
  const [best] = explore(job, [(excess) => 1e3 * others(excess) + over(excess)], BEYOND);
  return best === undefined || others(best.excess) > 0 ? Infinity : over(best.excess);
}

interface Yielded {
  readonly excess: Excess;
  readonly down: number;
  readonly cost: number;
}

/** The box for which wishes yield least when the band begins so many times higher. */
function yieldedAt(job: Job, rooms: ReturnType<typeof roomsOf>, ratio: number, step: number): Yielded | undefined {
  const shorter = { ...job, wanted: { ...job.wanted, lowest: job.wanted.lowest * ratio } };
  const [build] = explore(shorter, [(excess) => yielding(shorter, excess).cost], { ...BEYOND, step }, undefined, rooms);
  if (build === undefined) return undefined;
  const { down, cost } = yielding(shorter, build.excess);
  const excess = Float64Array.from(build.excess);
  if (ratio > 1) excess[LOWEST] = Math.max(0, excess[LOWEST] as number) + Math.log(ratio);
  return { excess, down, cost: cost + weightOf(job, LOWEST) * Math.log(ratio) };
}

/** Each higher beginning of the band that is tried, over the one before. */
const HIGHER = 1.1;
/** So many beginnings, the best by a coarse lattice, are looked at with a fine one. */
const LOOKED_AT = 3;

/**
 * The box for which wishes yield least. A band that begins higher costs depth, and asks far less of travel and air: a
 * coarse lattice finds where it may pay to begin, a fine one the box for that.
 */
function yieldedLeast(job: Job): Yielded | undefined {
  const { lowest, highest } = job.wanted;
  const rooms = roomsOf(job);
  const coarse: (Yielded & { ratio: number })[] = [];
  let least = Infinity;
  // No box gives back what the higher beginning itself costs.
  const pays = (ratio: number) =>
    lowest * ratio < highest / SHORTEST_BAND && weightOf(job, LOWEST) * Math.log(ratio) < least;
  for (let ratio = 1; ratio === 1 || pays(ratio); ratio *= HIGHER) {
    const found = yieldedAt(job, rooms, ratio, BEYOND.step);
    if (found === undefined) continue;
    coarse.push({ ratio, ...found });
    least = Math.min(least, found.cost);
  }
  const cheapest = (list: readonly Yielded[]) => [...list].sort((a, b) => a.cost - b.cost);
  const fine = (cheapest(coarse).slice(0, LOOKED_AT) as typeof coarse).flatMap(({ ratio, ...found }) => [
    yieldedAt(job, rooms, ratio, 1) ?? found,
    found,
  ]);
  return cheapest(fine)[0];
}

/**
 * The brief nearest to one that cannot be met: wishes yield by the least weighted relative sum, and by no more. Changes
 * grow until they suffice; then each is tried without, and smaller: wishes help each other, a shorter band, say, needs less
 * level.
 */
export function nearestBrief(job: Job): { brief: Brief; changes: Change[] } | undefined {
  const best = yieldedLeast(job);
  if (best === undefined) return undefined;
  const { down } = best;
  const met = (brief: Brief) => canBeMet(readBrief(brief));
  for (let margin = 0.002; margin < 0.3; margin *= 3) {
    const all = [...wishes.keys()].flatMap((index) => {
      const over = index === LEVEL ? down : excessAt(best.excess, index, down);
      return over > 0 ? [{ index, over, change: changeOf(job, index, over, margin) }] : [];
    });
    let kept = all;
    const brief = (list: typeof all) =>
      apply(
        job.brief,
        list.map(({ change }) => change),
      );
    if (!met(brief(kept))) continue;
    for (const one of all) {
      const without = kept.filter((other) => other !== one);
      if (without.length > 0 && met(brief(without))) kept = without;
    }
    for (const { index, over: before } of [...kept]) {
      const over = leastYield(readBrief(brief(kept.filter((other) => other.index !== index))), index);
      const change = changeOf(job, index, over, margin);
      const smaller = kept.map((other) => (other.index === index ? { index, over, change } : other));
      if (over < before && met(brief(smaller))) kept = smaller;
    }
    return { brief: brief(kept), changes: kept.map(({ change }) => change) };
  }
  return undefined;
}

/** What is left of an excess when the level goes down. */
const excessAt = (excess: Excess, index: number, down: number): number =>
  (excess[index] as number) - (index === SPEED || index === VOLTAGE || index === CURRENT ? down : 0);
