import { allowedVolume } from '../job/job.js';
import type { Parts, Point, Variant } from '../kind/box-kind.js';
import { latticeOf, type Scope, upperOf } from './axis.js';
import { judge } from './box.js';
import type { Cost } from './cost.js';
import { emptyDemand } from './demand.js';
import type { Criteria } from './points.js';
import type { Search } from './search.js';
import { edgesOf, type Shape } from './shapes.js';

/** The cheapest box of a variant's lattice for one cost. */
export interface Start {
  readonly variant: Variant;
  /** Outer edges, m. */
  readonly edges: readonly [number, number, number];
  readonly point: Point;
  readonly cost: number;
}

/** The grid that a survey visits. */
export interface Grid {
  readonly volumes: ArrayLike<number>;
  /** Values of the acoustic axes together, and of the geometric axes. */
  readonly acoustic: readonly (readonly number[])[];
  readonly geometric: readonly (readonly number[])[];
  readonly shapes: readonly Shape[];
  /** The name under which the room of its boxes is kept. Without it, the room is worked out for each box. */
  readonly name?: string;
}

const VOLUME_RATIO = 1.04;

/** Every combination of the values of some axes. */
const combinations = (lists: readonly ArrayLike<number>[]): number[][] =>
  lists.reduce<number[][]>((all, list) => all.flatMap((some) => Array.from(list, (value) => [...some, value])), [[]]);

/** The net volumes that are tried: from far less than any driver needs to all that the space leaves. */
function volumesOf({ job }: Search, { contents, choice }: Variant, scope: Scope, ratio: number): Float64Array {
  const { space } = job;
  const t = 2 * space.panelThickness;
  const inner = (space.width - t) * (space.height - t) * (space.depth - t) - contents;
  const most = Math.min(inner, allowedVolume(job)) * (scope.beyond ? 5 : 1);
  if (!(most > 0)) return new Float64Array(0);
  return latticeOf(Math.min(most, choice.completed.parameters.Vas / 16), most, ratio);
}

/** The whole lattice of a variant, `stride` of its steps at a time. */
export function wholeGrid(
  search: Search,
  variant: Variant,
  shapes: readonly Shape[],
  scope: Scope,
  stride: number,
): Grid {
  const steps = scope.step * stride;
  const lattice = (axes: Variant['acoustic']) =>
    combinations(axes.map((axis) => latticeOf(axis.from, upperOf(axis, scope), axis.ratio ** steps)));
  return {
    volumes: volumesOf(search, variant, scope, VOLUME_RATIO ** steps),
    acoustic: lattice(variant.acoustic),
    geometric: lattice(variant.geometric),
    shapes,
    name: `${scope.beyond} ${steps}`,
  };
}

/** Offsets near a point: for net volumes and acoustic values in parts of a lattice step, for the rest in whole units. */
const NEAR = [-1, -0.6, -0.3, 0, 0.3, 0.6, 1];
const NEAR_UNITS = [-3, -2, -1, 0, 1, 2, 3];

/** A fine grid around a point, with every shape: very different shapes may serve almost equally well. */
export function nearGrid({ acoustic, geometric }: Variant, point: Point, shapes: readonly Shape[], scope: Scope): Grid {
  const [volume = 0, ...others] = point;
  const within = (axis: Variant['acoustic'][number], values: readonly number[]) => [
    ...new Set(values.map((value) => Math.min(upperOf(axis, scope), Math.max(axis.from, value)))),
  ];
  return {
    volumes: NEAR.map((part) => volume * VOLUME_RATIO ** part),
    acoustic: combinations(
      acoustic.map((axis, i) =>
        within(
          axis,
          NEAR.map((part) => others[i]! * axis.ratio ** part),
        ),
      ),
    ),
    geometric: combinations(
      geometric.map((axis, i) =>
        within(
          axis,
          NEAR_UNITS.map((units) => others[acoustic.length + i]! + units * axis.unit),
        ),
      ),
    ),
    shapes,
  };
}

/** Room is looked up by inner volume in steps of 3 %, rounded down. */
const ROOM_RATIO = 1.03;
const ROOM_STEPS = 320;
const ROOM_FROM = 1e-3;

/**
 * Visits a grid of one variant: net volumes, then the acoustic axes, the geometric axes and the shapes. Each level is left as
 * soon as the best that it could give is dearer than what was found, so that most boxes are never made. Deterministic.
 */
export function surveyVariant(
  search: Search,
  variant: Variant,
  costs: readonly Cost[],
  { volumes, acoustic, geometric, shapes, name }: Grid,
  best: Float64Array,
): (Start | undefined)[] {
  const { job, wishes } = search;
  const t = 2 * job.space.panelThickness;
  const excess = new Float64Array(wishes.list.length);
  const edges = new Float64Array(3);
  const inner = new Float64Array(3);
  const criteria: Criteria = { depth: 0, level: 0, volume: 0, effort: 0 };
  const parts: Parts = { extent: 0, taken: 0, effort: 0 };
  const demandOf = search.demandOf(variant);
  const demand = emptyDemand();
  const found: (Start | undefined)[] = costs.map(() => undefined);
  const own = new Float64Array(costs.length).fill(Infinity);
  const point: number[] = [];
  const cube: Shape = { ...(shapes[0] as Shape), proportion: [1, 1, 1] };

  /** Whether the box could still be the cheapest for some cost. */
  const mayWin = (): boolean => {
    for (let k = 0; k < costs.length; k++) {
      const { of, slack } = costs[k] as Cost;
      const limit = Math.min(own[k]!, best[k]! + slack);
      if (of(excess, criteria) < limit) return true;
    }
    return false;
  };
  /** Sets the least outer size that holds an inner volume: no shape needs less. */
  const setLeast = (volume: number): boolean => {
    if (!edgesOf(cube, variant.least, volume, inner)) return false;
    let outer = 1;
    for (let axis = 0; axis < 3; axis++) outer *= inner[axis]! + t;
    criteria.volume = outer;
    return true;
  };
  const key = `${variant.roomKey ?? search.variants.indexOf(variant)} ${name}`;
  /** For each geometric cell and shape, the greatest extents by inner volume; −2 where not worked out yet. */
  const rooms = search.rooms.get(key) ?? [];
  if (name !== undefined) search.rooms.set(key, rooms);
  const roomOf = (shape: number, cell: number, step: number): number => {
    if (step < 0 || step >= ROOM_STEPS) return -1;
    const place = cell * shapes.length + shape;
    let table = rooms[place];
    if (table === undefined) {
      table = new Float32Array(ROOM_STEPS).fill(-2);
      rooms[place] = table;
    }
    if (table[step] === -2) {
      const stands = edgesOf(shapes[shape] as Shape, variant.least, ROOM_FROM * ROOM_RATIO ** step, inner);
      table[step] = stands ? variant.room(inner[0]!, inner[1]!, inner[2]!, point) : -1;
    }
    return table[step]!;
  };
  /** Whether the room was worked out before, and is too little. */
  const isKnownTooSmall = (shape: number, cell: number, step: number): boolean => {
    const known = rooms[cell * shapes.length + shape]?.[step] ?? -2;
    return known !== -2 && parts.extent > known;
  };

  for (const volume of Array.from(volumes)) {
    if (costs.every(({ least }, k) => best[k]! <= least)) break;
    if (!setLeast(volume + variant.contents)) continue;
    for (const sound of acoustic) {
      let judged = false;
      for (let cell = 0; cell < geometric.length; cell++) {
        point.length = 0;
        point.push(volume, ...sound, ...(geometric[cell] as readonly number[]));
        if (!judged) {
          judged = true;
          demandOf(point, demand);
          wishes.sound(demand, excess);
          excess.fill(-1, wishes.soundCount);
          setLeast(volume + variant.contents);
          criteria.effort = 0;
          criteria.depth = demand.depth;
          const used = Math.max(
            demand.travel,
            demand.heat,
            demand.voltage / job.amplifier.voltage,
            demand.current / job.amplifier.current,
          );
          criteria.level = job.wanted.level - 20 * Math.log10(used);
          wishes.volume(criteria.volume, excess);
          if (!mayWin()) break;
        }
        if (!variant.parts(point, parts)) continue;
        if (!setLeast(volume + variant.contents + parts.taken)) continue;
        judge(job, wishes, variant, point, demand, criteria, excess);
        criteria.effort = parts.effort;
        wishes.volume(criteria.volume, excess);
        if (mayWin()) tryShapes(volume + variant.contents + parts.taken, cell);
      }
    }
  }

  function tryShapes(volume: number, cell: number): void {
    const step = Math.floor(Math.log(volume / ROOM_FROM) / Math.log(ROOM_RATIO));
    let beyond = 0;
    for (let s = 0; s < shapes.length; s++) {
      const shape = shapes[s] as Shape;
      // Where no edge exceeds its bound, the shape that holds it equals the one that does not.
      if (shape.held > 0 && shape.free && (shape.held & beyond) === 0) continue;
      // A shape whose edges are free is measured all the same: it tells which edges others need not hold.
      const tooSmall = isKnownTooSmall(s, cell, step);
      if (tooSmall && shape.held > 0) continue;
      if (!edgesOf(shape, variant.least, volume, inner)) continue;
      if (shape.held === 0) {
        beyond = 0;
        for (let axis = 0; axis < 3; axis++) if (inner[axis]! > shape.full[axis]!) beyond |= 1 << axis;
      }
      if (tooSmall) continue;
      const [w, h, d] = [inner[0], inner[1], inner[2]] as [number, number, number];
      if (parts.extent > (variant.roomAtMost?.(w, h, d, point) ?? Infinity)) continue;
      edges[0] = w + t;
      edges[1] = h + t;
      edges[2] = d + t;
      criteria.volume = edges[0]! * edges[1]! * edges[2]!;
      wishes.size(edges, excess);
      if (!mayWin()) continue;
      if (parts.extent > (name === undefined ? variant.room(w, h, d, point) : roomOf(s, cell, step))) continue;
      for (let k = 0; k < costs.length; k++) {
        const cost = (costs[k] as Cost).of(excess, criteria);
        if (!(cost < own[k]!)) continue;
        own[k] = cost;
        if (cost < best[k]!) best[k] = cost;
        found[k] = { variant, edges: [...edges] as [number, number, number], point: [...point], cost };
      }
    }
  }
  return found;
}
