import { allowedVolume, type DriverChoice } from '../job/job.js';
import type { Variant } from '../kind/box-kind.js';
import type { Scope } from './axis.js';
import { type Box, compileBox } from './box.js';
import type { Cost } from './cost.js';
import { wholeGrid } from './grid.js';
import { cheapestOfSameSound } from './same-sound.js';
import { type Search, soundOf } from './search.js';
import { type Shape, shapesFor } from './shapes.js';
import { type Start, surveyVariant } from './survey.js';
import { cheapest, note, price, walksOf } from './walks.js';

/** Number of steps of the lattice taken at once in the first, coarse look. */
const STRIDE = 3;
/** The same where three acoustic axes or more are coarse already, and each of their steps changes the sound much. */
const STRIDE_OF_MANY = 2;
const strideOf = ({ acoustic }: Variant, { step }: Scope): number =>
  acoustic.length > 2 && step > 1 ? STRIDE_OF_MANY : STRIDE;
/** A variant is dropped when the coarse look finds it dearer than the best by this many slacks. */
const MARGIN = 6;
/** Ends of walks that are dearer than the best by at most this many slacks may be the cheapest in another shape. */
const RESHAPED = 0.4;

/**
 * The cheapest box for each cost. Every variant's lattice is surveyed, first coarsely and then finely where that may pay;
 * walks downhill in whole units follow from the best starts. The search is deterministic and has no seed. `seen` takes the least
 * cost of any box of a lattice, whether it can be made in whole units or not.
 */
export function explore(
  search: Search,
  costs: readonly Cost[],
  scope: Scope,
  seen = new Float64Array(costs.length),
): (Box | undefined)[] {
  const { job, variants, progress } = search;
  const shapes = shapesFor(job, scope.beyond);
  const best = Float64Array.from(costs, ({ most = Infinity }) => most);
  // As wide as the bound by which variants are kept, so that their order does not matter.
  const wide = costs.map((cost) => ({ ...cost, slack: MARGIN * cost.slack }));
  const first = firstLook(search, wide, shapes, scope, best);
  const promising = promisingOf(search, first, costs, best, scope.beyond ? 4 : 10);
  const ends = costs.map((): Box[] => []);
  const least = new Float64Array(costs.length).fill(Infinity);
  function walk(variant: Variant, starts: readonly (readonly Start[])[]): void {
    const own = walksOf(search, variant, costs, starts, shapes, scope, seen);
    costs.forEach((cost, k) => {
      const box = own[k];
      if (box === undefined) return;
      ends[k]!.push(box);
      least[k] = Math.min(least[k]!, price(cost, box));
    });
  }
  let count = 0;
  // Variants that differ from an earlier one in their room alone come last: they are of use only where they are cheaper.
  for (const alike of [false, true]) {
    const some = promising.filter((index) => isFirstOfSound(search, variants[index] as Variant) !== alike);
    const slacks = costs.map(({ slack }, k) => (alike && least[k]! < Infinity ? 0 : slack));
    const strict = costs.map((cost, k) => ({ ...cost, slack: slacks[k]! }));
    const fine = some.map((index) => {
      progress({ what: 'promising combination', count: ++count, of: promising.length });
      const variant = variants[index] as Variant;
      return surveyVariant(search, variant, strict, wholeGrid(search, variant, shapes, scope, 1), best);
    });
    note(seen, best);
    // Walks of one variant do not depend on what else there is to choose from, unless they could gain more than the slack.
    some.forEach((index, i) => {
      const starts = costs.map((cost, k) => {
        if (least[k]! <= cost.least) return [];
        const most = Math.min(best[k]! + cost.slack, least[k]! + slacks[k]!);
        return [first[index]?.[k], fine[i]?.[k]].filter((start) => start !== undefined && start.cost < most) as Start[];
      });
      walk(variants[index] as Variant, starts);
    });
  }
  return costs.map((cost, k) =>
    ends[k]!.filter((box) => price(cost, box) <= least[k]! + RESHAPED * cost.slack)
      .map((box) => (scope.thorough ? reshaped(search, box, cost, scope) : box))
      .reduce<Box | undefined>((one, other) => cheapest(cost, one, other), undefined),
  );
}

/** The cheapest box of about the same sound, where a cheaper one is of use. */
function reshaped(search: Search, box: Box, cost: Cost, scope: Scope): Box {
  const { job, wishes } = search;
  if (price(cost, box) <= cost.least) return box;
  const maker = compileBox(job, wishes, box.variant, search.demandOf(box.variant), scope);
  return cheapestOfSameSound(box, cost, maker, job.space.panelThickness, allowedVolume(job));
}

/** The cheapest box of each variant on a coarse lattice, for each cost. */
function firstLook(
  search: Search,
  costs: readonly Cost[],
  shapes: readonly Shape[],
  scope: Scope,
  best: Float64Array,
): (readonly (Start | undefined)[])[] {
  const { variants, progress } = search;
  return variants.map((variant, i) => {
    progress({ what: 'combination', count: i + 1, of: variants.length });
    return surveyVariant(
      search,
      variant,
      costs,
      wholeGrid(search, variant, shapes, scope, strideOf(variant, scope)),
      best,
    );
  });
}

/** The cost of the cheapest box with one choice of drivers, as a coarse look finds it; infinite where all are dearer than `most`. */
export function coarseCost(search: Search, choice: DriverChoice, cost: Cost, scope: Scope): number {
  const most = cost.most ?? Infinity;
  const best = Float64Array.of(most);
  const shapes = shapesFor(search.job, scope.beyond);
  for (const variant of search.variants) {
    if (variant.choice !== choice) continue;
    surveyVariant(search, variant, [{ ...cost, slack: 0 }], wholeGrid(search, variant, shapes, scope, STRIDE), best);
  }
  return best[0]! < most ? best[0]! : Infinity;
}

/** Whether no earlier variant sounds alike. */
function isFirstOfSound({ variants }: Search, variant: Variant): boolean {
  const sound = soundOf(variant);
  return sound === undefined || variants.find((one) => soundOf(one) === sound) === variant;
}

/** The variants that come nearest to the best for some cost in a coarse look; at most so many sounds for each cost. */
function promisingOf(
  { variants }: Search,
  first: readonly (readonly (Start | undefined)[])[],
  costs: readonly Cost[],
  best: Float64Array,
  most: number,
): number[] {
  const kept = new Set<number>();
  costs.forEach(({ slack }, k) => {
    const ranked = first
      .map((found, index) => ({ index, cost: found[k]?.cost ?? Infinity }))
      .filter(({ cost }) => cost <= best[k]! + MARGIN * slack || best[k] === Infinity)
      .sort((a, b) => a.cost - b.cost);
    const sounds = new Set<unknown>();
    for (const { index } of ranked) {
      const variant = variants[index] as Variant;
      sounds.add(soundOf(variant) ?? variant);
      if (sounds.size <= most) kept.add(index);
    }
  });
  return [...kept].sort((a, b) => a - b);
}
