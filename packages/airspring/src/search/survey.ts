import { allowedVolume } from '../job/job.js';
import type { Axis, Parts, Point, Span, Variant } from '../kind/box-kind.js';
import { latticeOf, type Scope, upperOf } from './axis.js';
import { asGoodAsCanBe, judge } from './box.js';
import type { Cost } from './cost.js';
import { emptyDemand } from './demand.js';
import type { Criteria } from './points.js';
import { compileRoom, type Room } from './room.js';
import type { Search } from './search.js';
import { edgesOf, type Shape, shapesAcross } from './shapes.js';

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
  /** Values of the acoustic axes together, and of the geometric axes with the span. */
  readonly acoustic: readonly (readonly number[])[];
  readonly geometric: readonly (readonly number[])[];
  readonly shapes: readonly Shape[];
  /** How many values the acoustic axis has on which the room depends as well; default none. */
  readonly inRoom?: number;
  /** The name under which the room of its boxes is kept. Without it, the room is worked out for each box. */
  readonly name?: string;
}

const VOLUME_RATIO = 1.04;

/** Every combination of the values of some axes. */
const combinations = (lists: readonly ArrayLike<number>[]): number[][] =>
  lists.reduce<number[][]>((all, list) => all.flatMap((some) => Array.from(list, (value) => [...some, value])), [[]]);

/** The values of the geometric axes, each with every value of the span. */
const withSpans = (values: number[][], { span }: Variant, of: (span: Span) => readonly number[]): number[][] =>
  span === undefined ? values : combinations([of(span)]).flatMap((edge) => values.map((some) => [...some, ...edge]));

const shapesOf = ({ span }: Variant, shapes: readonly Shape[]): readonly Shape[] =>
  span === undefined ? shapes : shapesAcross(span.edge, shapes);

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
  const roomAxis = variant.acoustic.at(-1);
  return {
    volumes: volumesOf(search, variant, scope, VOLUME_RATIO ** steps),
    acoustic: lattice(variant.acoustic),
    ...(roomAxis?.inRoom && { inRoom: lattice([roomAxis]).length }),
    geometric: withSpans(lattice(variant.geometric), variant, (span) => {
      const further = latticeOf(span.to, upperOf(span, scope), span.ratio);
      // As finely as shapes, of which no look leaves out any; the space is one of them even where more is looked at.
      return [...latticeOf(span.from, span.to, span.ratio), ...further.slice(1)];
    }),
    shapes: shapesOf(variant, shapes),
    name: `${scope.beyond} ${steps}`,
  };
}

/** Offsets near a point: for net volumes and acoustic values in parts of a lattice step, for the rest in whole units. */
const NEAR = [-1, -0.6, -0.3, 0, 0.3, 0.6, 1];
const NEAR_UNITS = [-3, -2, -1, 0, 1, 2, 3];

/** Parts of an octave by which the proportions near those of a box depart from them. */
const NEAR_SHAPES = [-0.12, -0.05, -0.02, 0, 0.02, 0.05, 0.12];

/**
 * Shapes a little longer or flatter than a box. A walk along its edges holds one of them and moves two at most; where both the
 * net volume and the length of a vent leave no play, only all three together lead to a shape that takes less wood.
 */
function shapesNear({ least, span }: Variant, inner: readonly number[], shapes: readonly Shape[]): Shape[] {
  const [width = 1, height = 1, depth = 1] = inner.map((edge, axis) => Math.max(edge, least[axis]!));
  const scale = Math.cbrt(width * height * depth);
  const alike = shapes.filter(({ proportion }) => proportion === shapes[0]?.proportion);
  return NEAR_SHAPES.flatMap((wide) =>
    NEAR_SHAPES.flatMap((high) => {
      const octaves = [wide, high, -wide - high] as const;
      if (span !== undefined && octaves[span.edge] !== 0) return [];
      const proportion = [width, height, depth].map((edge, axis) => (edge / scale) * 2 ** octaves[axis]!);
      return alike.map((shape) => ({ ...shape, proportion: proportion as [number, number, number] }));
    }),
  );
}

/**
 * A fine grid around a box, with every shape, since very different ones may serve almost equally well, and with those near its
 * own.
 */
export function nearGrid(
  { job }: Search,
  { variant, edges, point }: Pick<Start, 'variant' | 'edges' | 'point'>,
  shapes: readonly Shape[],
  scope: Scope,
): Grid {
  const { acoustic, geometric } = variant;
  const inner = edges.map((edge) => edge - 2 * job.space.panelThickness);
  const alike = shapesOf(variant, shapes);
  const [volume = 0, ...others] = point;
  const within = (axis: Pick<Axis, 'from' | 'to' | 'beyond'>, values: readonly number[]) => [
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
    geometric: withSpans(
      combinations(
        geometric.map((axis, i) =>
          within(
            axis,
            NEAR_UNITS.map((units) => others[acoustic.length + i]! + units * axis.unit),
          ),
        ),
      ),
      variant,
      (span) =>
        within(
          span,
          NEAR.map((part) => point[point.length - 1]! * span.ratio ** part),
        ),
    ),
    shapes: [...alike, ...shapesNear(variant, inner, alike)],
  };
}

/**
 * Visits a grid of one variant: net volumes, then the acoustic axes, the geometric axes and the shapes. Each level is left as
 * soon as the best that it could give is dearer than what was found, so that most boxes are never made. Deterministic.
 */
export function surveyVariant(
  search: Search,
  variant: Variant,
  costs: readonly Cost[],
  { volumes, acoustic, geometric, shapes, name, inRoom = 1 }: Grid,
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
  const edge = variant.span?.edge;
  const free = edge === undefined ? 0b111 : 0b111 & ~(1 << edge);
  /** The inner edges of a shape; at the span, that of the point. */
  const edgesFor = (shape: Shape, volume: number): boolean => {
    if (edge !== undefined) inner[edge] = point[point.length - 1]!;
    return edgesOf(shape, variant.least, volume, inner, free);
  };
  const edgesAtAnySpan = (shape: Shape, volume: number): boolean => edgesOf(shape, variant.least, volume, inner);
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
  const setLeast = (volume: number, edgesIn = edgesFor): boolean => {
    if (!edgesIn(cube, volume)) return false;
    let outer = 1;
    for (let axis = 0; axis < 3; axis++) outer *= inner[axis]! + t;
    criteria.volume = outer;
    return true;
  };
  const key = `${variant.roomKey ?? search.variants.indexOf(variant)} ${name}`;
  const rooms = search.rooms.get(key) ?? [];
  if (name !== undefined) search.rooms.set(key, rooms);
  const room = compileRoom(rooms, variant, shapes, edgesFor, inner);

  for (const volume of Array.from(volumes)) {
    if (costs.every(({ least }, k) => best[k]! <= least)) break;
    if (!setLeast(volume + variant.contents, edgesAtAnySpan)) continue;
    // Where the size alone is too dear, so is that of every larger volume.
    asGoodAsCanBe(excess, criteria);
    wishes.volume(criteria.volume, excess);
    if (!mayWin()) break;
    for (let at = 0; at < acoustic.length; at++) {
      const sound = acoustic[at] as readonly number[];
      const cells = (at % inRoom) * geometric.length;
      let judged = false;
      for (let cell = 0; cell < geometric.length; cell++) {
        point[0] = volume;
        for (let i = 0; i < sound.length; i++) point[1 + i] = sound[i]!;
        const sizes = geometric[cell] as readonly number[];
        for (let i = 0; i < sizes.length; i++) point[1 + sound.length + i] = sizes[i]!;
        if (!judged) {
          judged = true;
          demandOf(point, demand);
          wishes.sound(demand, excess);
          excess.fill(-1, wishes.soundCount);
          setLeast(volume + variant.contents, edgesAtAnySpan);
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
        const filled = volume + variant.contents + parts.taken;
        const known = name === undefined ? undefined : room.at(cells + cell, filled, point);
        if (name !== undefined && parts.extent > (known?.most ?? -1)) continue;
        if (!setLeast(filled)) continue;
        judge(job, wishes, variant, point, demand, criteria, excess);
        criteria.effort = parts.effort;
        wishes.volume(criteria.volume, excess);
        if (mayWin()) tryShapes(filled, known);
      }
    }
  }

  /** Tries every shape; `known` is the room that boxes of about this volume leave, where it is kept. */
  function tryShapes(volume: number, known: Room | undefined): void {
    for (let s = 0; s < shapes.length; s++) {
      if (known !== undefined && parts.extent > known.atMost[s]!) continue;
      if (!edgesFor(shapes[s] as Shape, volume)) continue;
      const [w, h, d] = [inner[0], inner[1], inner[2]] as [number, number, number];
      if (known === undefined && parts.extent > (variant.roomAtMost?.(w, h, d, point) ?? Infinity)) continue;
      edges[0] = w + t;
      edges[1] = h + t;
      edges[2] = d + t;
      criteria.volume = edges[0]! * edges[1]! * edges[2]!;
      wishes.size(edges, excess);
      if (!mayWin()) continue;
      if (parts.extent > (known ? room.leaves(known, s, volume, point) : variant.room(w, h, d, point))) continue;
      for (let k = 0; k < costs.length; k++) {
        const cost = (costs[k] as Cost).of(excess, criteria);
        if (!(cost < own[k]!)) continue;
        own[k] = cost;
        if (cost < best[k]!) best[k] = cost;
        found[k] = { variant, edges: [...edges] as [number, number, number], point: [...point], cost };
      }
    }
    if (known !== undefined) room.settle(known);
  }
  return found;
}
