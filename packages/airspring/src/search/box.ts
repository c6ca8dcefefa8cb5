import { NANOMETRE } from '@airspring/core/quantity';
import type { Job } from '../job/job.js';
import { volumesIn } from '../job/space-shape.js';
import type { Variant } from '../kind/box-kind.js';
import type { Parts, Point } from '../kind/point.js';
import { type Scope, upperOf, valueAt, wholeBounds } from './axis.js';
import type { Cost } from './cost.js';
import { copyOf, type Demand, depthWith, emptyDemand } from './demand.js';
import type { Criteria } from './points.js';
import type { Wishes } from './wishes.js';

/** A box that a saw and a printer can make: edges and parts in whole units, and everything that follows from them. */
export interface Box {
  readonly variant: Variant;
  /** Outer edges, m. */
  readonly edges: readonly [width: number, height: number, depth: number];
  readonly point: Point;
  readonly demand: Demand;
  readonly criteria: Criteria;
  readonly excess: Float64Array;
}

/** Whole numbers that make a box: its edges in mm, then the geometric and the acoustic axes, each in its unit. */
export type Cell = readonly number[];

const MM = 1e-3;
/** A search beyond the brief looks at edges up to this many times the space. */
const SPACE_BEYOND = 4;

/** Fills in what follows from a point and its demand, except for the size: criteria and the excesses of sound and parts. */
export function judge(
  job: Job,
  wishes: Wishes,
  variant: Variant,
  point: Point,
  demand: Demand,
  criteria: Criteria,
  excess: Float64Array,
): void {
  wishes.sound(demand, excess);
  wishes.own(variant, point, demand.loads, excess);
  rate(job, variant, point, demand, criteria);
}

/** The criteria alone. */
export function rate(
  { wanted, amplifier }: Job,
  variant: Variant,
  point: Point,
  demand: Demand,
  criteria: Criteria,
): void {
  let used = Math.max(
    demand.travel,
    demand.heat,
    demand.voltage / amplifier.voltage,
    demand.current / amplifier.current,
  );
  criteria.depth = demand.depth;
  for (let k = 0; k < demand.loads.length; k++) {
    const capacity = variant.loads![k]!.capacity(point);
    used = Math.max(used, demand.loads[k]! / capacity);
    criteria.depth = depthWith(demand, k, criteria.depth, capacity, wanted);
  }
  criteria.level = wanted.level - 20 * Math.log10(used);
}

/** Fills in values that no box can better, except for the size: the cost is then the least that any box of this size could have. */
export function asGoodAsCanBe(excess: Float64Array, criteria: Criteria): void {
  excess.fill(-1);
  criteria.depth = Number.EPSILON;
  criteria.level = Number.MAX_VALUE;
  criteria.effort = 0;
}

/** How the boxes of a variant are made from whole numbers. */
export function compileBox(
  job: Job,
  wishes: Wishes,
  variant: Variant,
  demandOf: (point: Point, out: Demand) => void,
  scope: Scope,
) {
  const { space } = job;
  const t = space.panelThickness;
  const { acoustic, geometric } = variant;
  const { airIn, outerIn } = volumesIn(job);
  const edges = (['width', 'height', 'depth'] as const).map((edge, axis) => ({
    unit: MM,
    from: variant.least[axis]! + 2 * t,
    to: scope.beyond && (space.shape?.open ?? edge) === edge ? space[edge] * SPACE_BEYOND : space[edge],
  }));
  const axes = [
    ...edges,
    ...geometric.map((axis) => ({ unit: axis.unit, from: axis.from, to: upperOf(axis, scope) })),
    ...(variant.made ?? acoustic).map((axis) => ({ unit: axis.unit, from: axis.from, to: upperOf(axis, scope) })),
  ];
  const bounds = axes.map(({ unit, from, to }) => wholeBounds(unit, from, to));
  const parts: Parts = { extent: 0, taken: 0, effort: 0 };

  const demand = emptyDemand(variant);
  const excess = new Float64Array(wishes.list.length);
  const criteria: Criteria = { depth: 0, level: 0, volume: 0, effort: 0 };
  const outer: [number, number, number] = [0, 0, 0];
  const asked: number[] = [];

  const value = (cell: Cell, i: number) => {
    const { unit, from, to } = axes[i] as (typeof axes)[number];
    return valueAt(cell[i]!, unit, from, to);
  };

  /** Sets the size of the box of a cell. Returns the air in it before its parts take theirs. */
  function airAt(cell: Cell): number {
    let product = 1;
    for (let axis = 0; axis < 3; axis++) {
      outer[axis] = value(cell, axis);
      product *= Math.max(0, outer[axis]! - 2 * t);
    }
    criteria.volume = outerIn(outer[0] * outer[1] * outer[2]);
    return airIn(product) - variant.contents;
  }

  /**
   * Judges the box of a cell, whose size is set, into `excess` and `criteria`. Returns its point, or `undefined` where no such
   * box can be made.
   */
  function pointAt(cell: Cell, before: number): Point | undefined {
    if (!(before > 0)) return undefined;
    asked[0] = before;
    for (let i = 0; i < acoustic.length; i++) asked[1 + i] = value(cell, 3 + geometric.length + i);
    for (let i = 0; i < geometric.length; i++) asked[1 + acoustic.length + i] = value(cell, 3 + i);
    const point = variant.settle(before, asked, inner(outer));
    return point !== undefined && isJudged(point) ? point : undefined;
  }

  /** Judges the box of a settled point, whose size is set, into `excess` and `criteria`; `false` where no such box can be made. */
  function isJudged(point: Point): boolean {
    if (!variant.parts(point, parts)) return false;
    if (parts.extent > roomAtMost(outer, point) + 1e-9) return false;
    demandOf(point, demand);
    criteria.effort = parts.effort;
    judge(job, wishes, variant, point, demand, criteria, excess);
    wishes.size(outer, excess);
    return true;
  }

  /** The least that any box of the size that is set could cost. */
  function leastFor(cost: Cost): number {
    asGoodAsCanBe(excess, criteria);
    wishes.size(outer, excess);
    return cost.of(excess, criteria);
  }

  /** The point of the cell that was priced last. */
  let priced: Point | undefined;

  /**
   * What the box of a cell costs, or at least `limit` where it costs no less; infinite where no box can be made. The room for
   * its parts is not checked.
   */
  function priceAt(cell: Cell, cost: Cost, limit: number): number {
    const before = airAt(cell);
    const least = leastFor(cost);
    if (least >= limit) return least;
    priced = pointAt(cell, before);
    return priced === undefined ? Infinity : cost.of(excess, criteria);
  }

  function boxAt(cell: Cell): Box | undefined {
    const point = pointAt(cell, airAt(cell));
    return point && boxOf(point);
  }

  /** Cells whose boxes have a price, but do not stand: walks for other costs come back to them. */
  const fallen = new Set<string>();

  /** The box of the cell that has just been priced, if it passes the full check. */
  function standingAt(cell: Cell): Box | undefined {
    const key = cell.join();
    if (priced === undefined || fallen.has(key)) return undefined;
    if (stands({ edges: outer, point: priced })) return boxOf(priced);
    fallen.add(key);
    return undefined;
  }

  /** The box that has just been judged. */
  function boxOf(point: Point): Box {
    return {
      variant,
      edges: [...outer],
      point,
      demand: copyOf(demand),
      criteria: { ...criteria },
      excess: excess.slice(),
    };
  }

  /** The box with these outer edges at a point that is settled. */
  function judged(edges: Box['edges'], point: Point): Box | undefined {
    if (edges.some((edge, axis) => edge < variant.least[axis]! + 2 * t - NANOMETRE)) return undefined;
    for (let axis = 0; axis < 3; axis++) outer[axis] = edges[axis]!;
    criteria.volume = outerIn(outer[0] * outer[1] * outer[2]);
    return isJudged(point) ? boxOf(point) : undefined;
  }
  const inner = (outer: readonly [number, number, number]): [number, number, number] => [
    outer[0] - 2 * t,
    outer[1] - 2 * t,
    outer[2] - 2 * t,
  ];
  const roomAtMost = (outer: readonly [number, number, number], point: Point): number =>
    variant.roomAtMost?.(outer[0] - 2 * t, outer[1] - 2 * t, outer[2] - 2 * t, point) ?? Infinity;

  /** The full check by core: a part slightly longer than the longest straight one may be too short to bend. */
  function stands({ edges: size, point }: Pick<Box, 'edges' | 'point'>): boolean {
    if (variant.fits) return variant.fits(...inner(size), point);
    if (!variant.parts(point, parts)) return false;
    const needed = parts.extent - 1e-9;
    if (needed > variant.room(...inner(size), point, needed)) return false;
    return variant.place(size, point).ok;
  }
  const lower = bounds.map(([low]) => low);
  const upper = bounds.map(([, high]) => high);
  return { priceAt, standingAt, boxAt, judged, stands, lower, upper };
}

/** The whole numbers nearest to the outer edges and to a point. */
export function cellOf({ acoustic, geometric, made }: Variant, edges: ArrayLike<number>, point: Point): number[] {
  const whole = (value: number, unit: number) => Math.round(value / unit);
  return [
    ...[0, 1, 2].map((axis) => whole(edges[axis]!, MM)),
    ...geometric.map(({ unit }, i) => whole(point[1 + acoustic.length + i]!, unit)),
    ...(made?.map(({ unit, of }) => whole(of(point), unit)) ??
      acoustic.map(({ unit }, i) => whole(point[1 + i]!, unit))),
  ];
}
