import { SHORTEST_BAND } from '../job/job.js';
import type { Wish } from '../kind/wish.js';
import { BEYOND } from './axis.js';
import type { Box } from './box.js';
import { explore } from './explore.js';
import { type Search, searchAgain } from './search.js';
import { placeOf, weightOf, yieldingOf } from './yielding.js';

/** The box to which the wishes yield, and what that costs. */
interface Yielded {
  /** How many steps higher the band begins. */
  readonly rung: number;
  readonly box: Box;
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
  const shorter =
    rung === 0 ? search : searchAgain(search, { ...job, wanted: { ...job.wanted, lowest: job.wanted.lowest * ratio } });
  const lowest = placeOf(search, 'wanted.lowest');
  const higher = weightOf(job, search.wishes.list[lowest] as Wish) * Math.log(ratio);
  const yielding = yieldingOf(shorter);
  const scope = { ...BEYOND, step, thorough: step === 1 };
  const [box] = explore(shorter, [{ ...yielding, most: most - higher }], scope);
  if (box === undefined) return undefined;
  const excess = Float64Array.from(box.excess);
  if (ratio > 1) excess[lowest] = Math.max(0, excess[lowest]!) + Math.log(ratio);
  return { rung, box, excess, down: yielding.down(box.excess), cost: yielding.of(box.excess, box.criteria) + higher };
}

/**
 * The beginning that is tried first, as a number of steps. A band that begins higher mostly costs less, and what it costs cuts
 * the others short.
 */
const FIRST = 4;

/**
 * How much a finer lattice and a walk may gain on a box of the coarse lattice. Its steps are 8 % in volume, 6 % in tuning and
 * 14 % in the diameter of a vent. Half a step of each is an excess of 0.04, 0.03 and 0.07; the gain that is counted with is
 * their sum.
 */
export const GAIN = 0.14;

/** The same where two tunings and a share are looked at: a step of the lattice is 17 % in the tunings and 44 % in their ratio and the share. */
const GAIN_OF_MANY = 0.4;

/** By how much a fine search may come nearer than the first, coarse look. */
export const gainOf = ({ variants }: Search): number =>
  variants.some(({ acoustic }) => acoustic.length > 2) ? GAIN_OF_MANY : GAIN;

/**
 * The box for which the wishes yield least. A band that begins higher costs depth but asks far less of travel and air. A
 * coarse lattice is surveyed for every other beginning, then for those beside the best, and a fine one for each of them. A
 * search is left as soon as it can no longer cost less than the best so far, with what a finer one may gain: most end at once.
 */
export function yieldedLeast(search: Search, gain = gainOf(search)): Yielded | undefined {
  const { job } = search;
  const { lowest, highest } = job.wanted;
  const weight = weightOf(job, search.wishes.list[placeOf(search, 'wanted.lowest')] as Wish);
  const found: Yielded[] = [];
  const cheapestFirst = () => [...found].sort((a, b) => a.cost - b.cost);
  const least = () => cheapestFirst()[0]?.cost ?? Infinity;
  // No box can win back what the higher beginning itself costs.
  const pays = (rung: number) =>
    rung === 0 || (lowest * HIGHER ** rung < highest / SHORTEST_BAND && weight * rung * Math.log(HIGHER) < least());
  const look = (rung: number, step: number) => {
    const most = least() + (step > 1 ? gain : 0);
    const one = pays(rung) ? yieldedAt(search, rung, step, most) : undefined;
    if (one !== undefined) found.push(one);
  };
  look(FIRST, BEYOND.step);
  for (let rung = 0; pays(rung); rung += 2) if (rung !== FIRST) look(rung, BEYOND.step);
  const [best] = cheapestFirst();
  if (best === undefined) return undefined;
  if (best.rung > 0) look(best.rung - 1, BEYOND.step);
  look(best.rung + 1, BEYOND.step);
  for (const rung of new Set(cheapestFirst().map((one) => one.rung))) look(rung, 1);
  return cheapestFirst()[0];
}
