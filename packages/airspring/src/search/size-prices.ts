import { asGoodAsCanBe } from './box.js';
import type { Cost } from './cost.js';
import type { Alike } from './distinct-shapes.js';
import type { Criteria } from './points.js';
import type { Wishes } from './wishes.js';

/** What sizes of about one inner volume cost at least. */
export interface SizePrices {
  /** Of any shape, for each cost. */
  readonly least: Float64Array;
  /** Of each shape, by its place, for each cost. */
  readonly of: readonly Float64Array[];
}

/**
 * Prepares what the size of a box costs at least, where misses alone decide: it adds to what the rest costs. Edges only grow with the
 * volume, so that those at the beginning of a step of volume cost least in all of it. `panels` is what both panels add to an edge.
 */
export function compileSizePrices(
  costs: readonly Cost[],
  wishes: Wishes,
  panels: number,
): (groups: readonly Alike[]) => SizePrices {
  const excess = new Float64Array(wishes.list.length);
  const criteria: Criteria = { depth: 0, level: 0, volume: 0, effort: 0 };
  const outer = new Float64Array(3);
  asGoodAsCanBe(excess, criteria);
  const known = new Map<readonly Alike[], SizePrices>();
  const pricesOf = (groups: readonly Alike[]): SizePrices => {
    const least = new Float64Array(costs.length).fill(Infinity);
    const count = Math.max(0, ...groups.flatMap(({ places }) => places)) + 1;
    const of = costs.map(() => new Float64Array(count));
    for (const { places, smallest } of groups) {
      for (let i = 0; i < places.length; i++) {
        for (let axis = 0; axis < 3; axis++) outer[axis] = smallest[3 * i + axis]! + panels;
        wishes.size(outer, excess);
        for (let k = 0; k < costs.length; k++) {
          const price = costs[k]!.of(excess, criteria);
          of[k]![places[i]!] = price;
          if (price < least[k]!) least[k] = price;
        }
      }
    }
    return { least, of };
  };
  return (groups) => {
    let prices = known.get(groups);
    if (prices === undefined) {
      prices = pricesOf(groups);
      known.set(groups, prices);
    }
    return prices;
  };
}
