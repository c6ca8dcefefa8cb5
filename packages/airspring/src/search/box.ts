import type { Job } from '../job/job.js';
import type { Parts, Point, Variant } from '../kind/box-kind.js';
import { type Scope, upperOf, valueAt, wholeBounds } from './axis.js';
import type { Cost } from './cost.js';
import { type Demand, depthWith, emptyDemand } from './demand.js';
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
  const capacity = variant.load?.capacity(point) ?? Infinity;
  const { wanted, amplifier } = job;
  wishes.sound(demand, excess);
  wishes.own(variant, point, demand.load, excess);
  const used = Math.max(
    demand.travel,
    demand.heat,
    demand.load / capacity,
    demand.voltage / amplifier.voltage,
    demand.current / amplifier.current,
  );
  criteria.level = wanted.level - 20 * Math.log10(used);
  criteria.depth = depthWith(demand, capacity, wanted);
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
  const edges = (['width', 'height', 'depth'] as const).map((edge, axis) => ({
    unit: MM,
    from: variant.least[axis]! + 2 * t,
    to: scope.beyond ? space[edge] * SPACE_BEYOND : space[edge],
  }));
  const axes = [
    ...edges,
    ...geometric.map((axis) => ({ unit: axis.unit, from: axis.from, to: upperOf(axis, scope) })),
    ...acoustic.map((axis) => ({ unit: axis.unit, from: axis.from, to: upperOf(axis, scope) })),
  ];
  const bounds = axes.map(({ unit, from, to }) => wholeBounds(unit, from, to));
  const parts: Parts = { extent: 0, taken: 0, effort: 0 };

  const demand = emptyDemand();
  const excess = new Float64Array(wishes.list.length);
  const criteria: Criteria = { depth: 0, level: 0, volume: 0, effort: 0 };
  const outer: [number, number, number] = [0, 0, 0];
  const asked: number[] = [];

  /** Judges the box of a cell into `excess` and `criteria`. Returns its point, or `undefined` where no such box can be made. */
  function pointAt(cell: Cell): Point | undefined {
    const value = (i: number) => {
      const { unit, from, to } = axes[i] as (typeof axes)[number];
      return valueAt(cell[i]!, unit, from, to);
    };
    let before = -variant.contents;
    let product = 1;
    for (let axis = 0; axis < 3; axis++) {
      outer[axis] = value(axis);
      product *= Math.max(0, outer[axis]! - 2 * t);
    }
    before += product;
    if (!(before > 0)) return undefined;
    asked.length = 0;
    asked.push(before);
    for (let i = 3 + geometric.length; i < axes.length; i++) asked.push(value(i));
    for (let i = 3; i < 3 + geometric.length; i++) asked.push(value(i));
    const point = variant.settle(before, asked, inner(outer));
    if (point === undefined || !variant.parts(point, parts)) return undefined;
    if (parts.extent > roomAtMost(outer, point) + 1e-9) return undefined;
    demandOf(point, demand);
    criteria.volume = outer[0] * outer[1] * outer[2];
    criteria.effort = parts.effort;
    judge(job, wishes, variant, point, demand, criteria, excess);
    wishes.size(outer, excess);
    return point;
  }

  /** What the box of a cell costs; infinite where no box can be made. Only boxes that may win are checked for room for parts. */
  const priceAt = (cell: Cell, cost: Cost): number =>
    pointAt(cell) === undefined ? Infinity : cost.of(excess, criteria);

  function boxAt(cell: Cell): Box | undefined {
    const point = pointAt(cell);
    if (point === undefined) return undefined;
    return {
      variant,
      edges: [...outer],
      point,
      demand: { ...demand, loadBelow: demand.loadBelow.slice() },
      criteria: { ...criteria },
      excess: excess.slice(),
    };
  }
  const inner = (outer: readonly [number, number, number]): [number, number, number] => [
    outer[0] - 2 * t,
    outer[1] - 2 * t,
    outer[2] - 2 * t,
  ];
  const roomAtMost = (outer: readonly [number, number, number], point: Point): number =>
    variant.roomAtMost?.(...inner(outer), point) ?? Infinity;

  /** The full check by core: a part slightly longer than the longest straight one may be too short to bend. */
  function stands({ edges: size, point }: Box): boolean {
    if (!variant.parts(point, parts)) return false;
    if (parts.extent > variant.room(...inner(size), point) + 1e-9) return false;
    return variant.place(size, point).ok;
  }
  const lower = bounds.map(([low]) => low);
  const upper = bounds.map(([, high]) => high);
  return { priceAt, boxAt, stands, lower, upper };
}

/** The whole numbers nearest to the outer edges and to a point. */
export function cellOf({ acoustic, geometric }: Variant, edges: ArrayLike<number>, point: Point): number[] {
  const whole = (value: number, unit: number) => Math.round(value / unit);
  return [
    ...[0, 1, 2].map((axis) => whole(edges[axis]!, MM)),
    ...geometric.map(({ unit }, i) => whole(point[1 + acoustic.length + i]!, unit)),
    ...acoustic.map(({ unit }, i) => whole(point[1 + i]!, unit)),
  ];
}
