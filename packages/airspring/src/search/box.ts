import type { Job } from '../job/job.js';
import type { Parts, Point, Variant } from '../kind/box-kind.js';
import { type Scope, upperOf, valueAt, wholeBounds } from './axis.js';
import { type Demand, depthWith, emptyDemand } from './demand.js';
import type { Criteria } from './points.js';
import type { Wishes } from './wishes.js';

/** A box that a saw and a printer can make: edges and parts in whole units, and all that follows. */
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
/** So many times beyond the space a search looks for what would do. */
const SPACE_BEYOND = 4;

/** Fills in what follows from a point and its demand, the size left aside: criteria and the excesses of sound and parts. */
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
  criteria.depth = depthWith(demand, capacity, wanted.lowest);
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
    from: (variant.least[axis] as number) + 2 * t,
    to: scope.beyond ? space[edge] * SPACE_BEYOND : space[edge],
  }));
  const axes = [
    ...edges,
    ...geometric.map((axis) => ({ unit: axis.unit, from: axis.from, to: upperOf(axis, scope) })),
    ...acoustic.map((axis) => ({ unit: axis.unit, from: axis.from, to: upperOf(axis, scope) })),
  ];
  const bounds = axes.map(({ unit, from, to }) => wholeBounds(unit, from, to));
  const parts: Parts = { extent: 0, taken: 0, effort: 0 };

  /** The box of a cell, and whether its parts find room, asked last since it costs most. */
  function boxAt(cell: Cell): Box | undefined {
    const values = cell.map((whole, i) => {
      const { unit, from, to } = axes[i] as (typeof axes)[number];
      return valueAt(whole, unit, from, to);
    });
    const outer = values.slice(0, 3) as [number, number, number];
    const before = outer.reduce((product, edge) => product * Math.max(0, edge - 2 * t), 1) - variant.contents;
    if (!(before > 0)) return undefined;
    const wanted = [before, ...values.slice(3 + geometric.length), ...values.slice(3, 3 + geometric.length)];
    const point = variant.settle(before, wanted);
    if (point === undefined || !variant.parts(point, parts)) return undefined;
    if (parts.extent > roomAtMost(outer, point) + 1e-9) return undefined;
    const demand = emptyDemand();
    demandOf(point, demand);
    const excess = new Float64Array(wishes.list.length);
    const criteria = { depth: 0, level: 0, volume: outer[0] * outer[1] * outer[2], effort: parts.effort };
    judge(job, wishes, variant, point, demand, criteria, excess);
    wishes.size(outer, excess);
    return { variant, edges: outer, point, demand, criteria, excess };
  }
  const inner = (outer: readonly [number, number, number]): [number, number, number] => [
    outer[0] - 2 * t,
    outer[1] - 2 * t,
    outer[2] - 2 * t,
  ];
  const roomAtMost = (outer: readonly [number, number, number], point: Point): number =>
    variant.roomAtMost?.(...inner(outer), point) ?? Infinity;

  /** The full judgement of core: a part a little longer than the longest straight one may be too short to bend. */
  function stands({ edges: outer, point }: Box): boolean {
    if (!variant.parts(point, parts)) return false;
    if (parts.extent > variant.room(...inner(outer), point) + 1e-9) return false;
    return variant.place(outer, point).ok;
  }
  const lower = bounds.map(([low]) => low);
  const upper = bounds.map(([, high]) => high);
  return { boxAt, stands, lower, upper };
}

/** The whole numbers nearest to outer edges and a point. */
export function cellOf({ acoustic, geometric }: Variant, edges: ArrayLike<number>, point: Point): number[] {
  const whole = (value: number, unit: number) => Math.round(value / unit);
  return [
    ...[0, 1, 2].map((axis) => whole(edges[axis] as number, MM)),
    ...geometric.map(({ unit }, i) => whole(point[1 + acoustic.length + i] as number, unit)),
    ...acoustic.map(({ unit }, i) => whole(point[1 + i] as number, unit)),
  ];
}
