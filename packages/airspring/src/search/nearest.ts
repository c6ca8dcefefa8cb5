import { isInputError } from '@airspring/core/fault';
import { readBrief } from '../brief/read.js';
import { type DriverChoice, type Job, SHORTEST_BAND, type Written } from '../job/job.js';
import type { Wish } from '../kind/wish.js';
import { BEYOND, WITHIN } from './axis.js';
import { anyBox } from './best.js';
import { type Box, compileBox } from './box.js';
import { apply, type Change, changeOf } from './change.js';
import type { Cost } from './cost.js';
import { coarseCost, explore } from './explore.js';
import { GAIN, gainOf, yieldedLeast } from './later-band.js';
import { memory, nameOfChoice, type Search, searchAgain, searchOf, soundOf } from './search.js';
import { missed } from './wishes.js';
import { placeOf, weightOf, yieldingOf } from './yielding.js';

/** What a miss of any other wish weighs beside the wish that yields. */
const OTHERS = 1e3;

/** By how much one wish must yield, and the box to which it does. */
interface Yielded {
  readonly box: Box | undefined;
  readonly over: number;
}

/** By how much one wish must yield when every other wish is met, if that is less than `most`. */
function leastYield(search: Search, path: string, most: number): Yielded {
  const { list } = search.wishes;
  const index = placeOf(search, path);
  const yields = [...list.keys()].filter(
    (i) => i === index || (path === 'wanted.level' && list[i]?.easedByLevel === true),
  );
  const rest = [...list.keys()].filter((i) => !yields.includes(i));
  const over = (excess: Float64Array) => yields.reduce((most, i) => Math.max(most, excess[i]!), 0);
  const others = (excess: Float64Array) => rest.reduce((sum, i) => sum + Math.max(0, excess[i]!), 0);
  // A box of the coarse lattice may miss another wish by so much, and a walk still lead to one that meets it.
  const limit = most + OTHERS * GAIN;
  const of = (excess: Float64Array) => OTHERS * others(excess) + over(excess);
  const cost: Cost = { of, slack: 0.02, least: 0, byMiss: true, most: limit };
  const [best] = explore(search, [cost], BEYOND);
  return { box: best, over: best === undefined || others(best.excess) > 0 ? Infinity : over(best.excess) };
}

/** The first of some boxes of other searches of these drivers that meets every wish of this one. */
function metByOneOf({ job, variants, wishes, demandOf }: Search, boxes: readonly Box[]): Box | undefined {
  for (const variant of variants) {
    const { judged, stands } = compileBox(job, wishes, variant, demandOf(variant), WITHIN);
    for (const { variant: like, edges, point } of boxes) {
      if (soundOf(variant) !== soundOf(like) || variant.built !== like.built) continue;
      if (variant.kind !== like.kind || nameOfChoice(variant.choice) !== nameOfChoice(like.choice)) continue;
      const box = judged(edges, point);
      if (box !== undefined && missed(box.excess) === 0 && stands(box)) return box;
    }
  }
  return undefined;
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

/** A brief that can be met, and a box that meets it. */
export interface Nearest {
  readonly brief: Written;
  readonly changes: readonly Change[];
  readonly box: Box;
  /** Of that brief, over the choices of drivers that were looked at. */
  readonly search: Search;
}

/**
 * The nearest brief that can be met: the weighted sum of the relative changes is the least that was found. Changes grow until
 * they suffice. Then each is left out or made smaller as far as possible, since one change can spare another: a shorter band,
 * for example, needs less level.
 */
export function nearestBrief(whole: Search): Nearest | undefined {
  const places = likeliest(whole);
  const some = (job: Job): Job => ({ ...job, choices: places.map((place) => job.choices[place] as DriverChoice) });
  // The room in a box depends on all but the sound.
  const roomsOf = memory((_: string): Search['rooms'] => new Map());
  // What a box sounds like depends on all but the space.
  const soundOfBrief = (brief: Written): string => JSON.stringify({ ...brief, space: undefined });
  const asWritten = soundOfBrief(whole.job.written);
  const soundsOf = memory((key: string): Search['sounds'] => (key === asWritten ? whole.sounds : new Map()));
  const again = (brief: Written): Search => ({
    ...searchOf(
      some(readBrief(brief, whole.kinds, whole.models, whole.job.alignments, whole.job.shapes)),
      whole,
      soundsOf(soundOfBrief(brief)),
    ),
    rooms: roomsOf(JSON.stringify({ ...brief, wanted: undefined, amplifier: undefined })),
  });
  /** As well for a brief whose changes may contradict each other, such as those of both ends of the band. */
  const readable = (brief: Written): Search | undefined => {
    try {
      return again(brief);
    } catch (error) {
      if (isInputError(error)) return undefined;
      throw error;
    }
  };
  // What boxes of the whole search sound like is known from the look for one that meets it.
  const search = places.length === whole.job.choices.length ? whole : again(whole.job.written);
  const best = yieldedLeast(search);
  if (best === undefined) return undefined;
  const { excess, down } = best;
  /** Boxes of wishes that yield. A search of the yielded brief may miss them. */
  const known: Box[] = [best.box];
  const { list } = search.wishes;
  /** The last brief that was found to be met, and a box that meets it. */
  let last: Omit<Nearest, 'changes'> | undefined;
  const met = (brief: Written): boolean => {
    const search = readable(brief);
    if (search === undefined) return false;
    const box = metByOneOf(search, known) ?? anyBox(search);
    if (box !== undefined) last = { brief, box, search };
    return box !== undefined;
  };
  /** What is left of an excess when the level is lowered. */
  const overOf = (wish: Wish, i: number) =>
    wish.path === 'wanted.level' ? down : excess[i]! - (wish.easedByLevel ? down : 0);
  for (let margin = 0.002; margin < 0.3; margin *= 3) {
    const all = list.flatMap((wish, i) => {
      const over = overOf(wish, i);
      return over > 0 ? [{ wish, over, change: changeOf(search.job, wish, over, margin) }] : [];
    });
    let kept = all;
    const brief = (some: typeof all) =>
      apply(
        search.job.written,
        some.map(({ change }) => change),
      );
    if (!met(brief(kept))) continue;
    for (const one of all) {
      // Without this change the others would cost so much less than the least that was found that no box meets them.
      if (weightOf(search.job, one.wish) * one.over > gainOf(search)) continue;
      const without = kept.filter((other) => other !== one);
      if (without.length > 0 && met(brief(without))) kept = without;
    }
    // A single change is the least already: wishes yield least to the box that was found first.
    for (const { wish, over: before } of kept.length > 1 ? [...kept] : []) {
      const others = readable(brief(kept.filter((other) => other.wish !== wish)));
      if (others === undefined) continue;
      const { box, over } = leastYield(others, wish.path, before);
      if (over >= before) continue;
      if (box !== undefined) known.push(box);
      const change = changeOf(search.job, wish, over, margin);
      const smaller = kept.map((other) => (other.wish === wish ? { wish, over, change } : other));
      if (met(brief(smaller))) kept = smaller;
    }
    return last && { ...last, changes: kept.map(({ change }) => change) };
  }
  return undefined;
}
