import { descend } from '@airspring/core/numeric';
import type { Variant } from '../kind/box-kind.js';
import type { Scope } from './axis.js';
import { type Box, cellOf, compileBox } from './box.js';
import type { Cost } from './cost.js';
import { nearGrid } from './grid.js';
import type { Search } from './search.js';
import type { Shape } from './shapes.js';
import { type Start, surveyVariant } from './survey.js';

/** Number of the cheapest starts from which a walk is taken. */
const TRIED = 2;
/** Number of fine surveys around the ends of walks, for other shapes and for each other's costs. */
const ROUNDS = 3;
/** Lowers the least costs that were seen. */
export function note(seen: Float64Array, costs: ArrayLike<number>): void {
  for (let k = 0; k < seen.length; k++) seen[k] = Math.min(seen[k]!, costs[k]!);
}

export const price = (cost: Cost, box: Box | undefined): number =>
  box === undefined ? Infinity : cost.of(box.excess, box.criteria);

export const cheapest = (cost: Cost, one: Box | undefined, other: Box | undefined): Box | undefined =>
  price(cost, other) < price(cost, one) ? other : one;

/** The cheapest boxes of a variant to which walks lead from the starts for each cost, and from fine surveys around their ends. */
export function walksOf(
  search: Search,
  variant: Variant,
  costs: readonly Cost[],
  starts: readonly (readonly Start[])[],
  shapes: readonly Shape[],
  scope: Scope,
  seen: Float64Array,
): (Box | undefined)[] {
  if (starts.every((some) => some.length === 0)) return [];
  const maker = compileBox(search.job, search.wishes, variant, search.demandOf(variant), scope);
  // A walk from the same place ends where it ended before.
  const walked = costs.map(() => new Set<string>());
  const walk = (k: number, from: readonly Start[]) => refine(costs[k] as Cost, from, maker, walked[k] as Set<string>);
  let ends = starts.map((some, k) => walk(k, some));
  for (let round = 0; scope.thorough && round < ROUNDS; round++) {
    const around = new Map<Box, (Start | undefined)[]>();
    for (const box of new Set(ends)) {
      if (box === undefined) continue;
      const grid = nearGrid(search, box, shapes, scope);
      const known = Float64Array.from(costs, (cost, k) => price(cost, ends[k]) - cost.slack);
      const found = surveyVariant(search, variant, costs, grid, known);
      note(
        seen,
        found.map((start) => start?.cost ?? Infinity),
      );
      around.set(box, found);
    }
    // The end of one walk may be better for another cost than the end of that cost's own walk.
    const next = costs.map((cost, k) => {
      const own = ends[k];
      const better = [
        ...[...around.values()].flatMap((found) => found[k] ?? []),
        ...[...around.keys()].flatMap((box) => (box === own ? [] : [{ ...box, cost: price(cost, box) }])),
      ].filter((start) => start.cost < price(cost, own));
      return better.length === 0 ? own : cheapest(cost, own, walk(k, better));
    });
    if (next.every((box, k) => box === ends[k])) break;
    ends = next;
  }
  return ends;
}

type Maker = ReturnType<typeof compileBox>;
const FIRST_STEP = 8;

/** Walks downhill in whole units from the best starts, and returns the best box that can be made where a walk ends. */
function refine(
  cost: Cost,
  starts: readonly Start[],
  { priceAt, standingAt, lower, upper }: Maker,
  walked: Set<string>,
): Box | undefined {
  const tried = [...starts].sort((a, b) => a.cost - b.cost).slice(0, TRIED);
  let cheapest: { box: Box; cost: number } | undefined;
  for (const { variant, edges, point } of tried) {
    let least = Infinity;
    const price = (cell: readonly number[]) => {
      if ((cheapest?.cost ?? Infinity) <= cost.least) return Infinity;
      const price = priceAt(cell, cost, least);
      if (price >= least) return price;
      const box = standingAt(cell);
      if (box === undefined) return Infinity;
      least = price;
      if (price < (cheapest?.cost ?? Infinity)) cheapest = { box, cost: price };
      return price;
    };
    const start = cellOf(variant, edges, point).map((whole, i) => Math.min(upper[i]!, Math.max(lower[i]!, whole)));
    if (walked.has(String(start))) continue;
    walked.add(String(start));
    descend(price, nearby(start, upper, price), { lower, upper, firstStep: FIRST_STEP });
  }
  return cheapest?.box;
}

/** The start itself, or the first slightly larger box that can be made: a box of the lattice lies between whole units. */
function nearby(cell: readonly number[], upper: readonly number[], price: (cell: readonly number[]) => number) {
  if (price(cell) < Infinity) return cell;
  for (const up of [1, 2, 4, 8, 16]) {
    for (const axes of [[0], [1], [2], [0, 1, 2], [cell.length - 1], [0, 1, 2, cell.length - 1]]) {
      const near = cell.map((whole, i) => (axes.includes(i) ? Math.min(upper[i]!, whole + up) : whole));
      if (price(near) < Infinity) return near;
    }
  }
  return cell;
}
