import type { Job } from '../job/job.js';

/** A shape of box: inner edges for any inner volume, in fixed proportions as far as the bounds allow. */
export interface Shape {
  /** Proportions of the inner edges; their product is 1. */
  readonly proportion: Float64Array;
  /** Greatest inner edges; infinite where an edge may grow. */
  readonly most: Float64Array;
  /** Which edges are held at a bound, as bits; whether the same shape with fewer held edges comes earlier in the list; the inner edges of the space. */
  readonly held: number;
  readonly free: boolean;
  readonly full: readonly number[];
}

/** The same shape in other proportions. */
export const inProportion = ({ most, held, free, full }: Shape, proportion: Float64Array): Shape => ({
  proportion,
  most,
  held,
  free,
  full,
});

/** The parts of an octave by which proportions depart from a cube, in either direction. */
const SPREAD = [0, 0.12, 0.24, 0.38, 0.55, 0.75, 1, 1.4];
const BOTH_WAYS = [...SPREAD.slice(1).map((part) => -part), ...SPREAD];
const COARSE = BOTH_WAYS.filter((part) => SPREAD.indexOf(Math.abs(part)) % 3 === 0);

const AXES = { width: 0, height: 1, depth: 2 } as const;

/** Sets of edges that are held within the space; the last set holds all of them. */
const HELD = [0, 1, 2, 3, 4, 5, 6, 7];

/**
 * The shapes that a search tries. Those nearest to a cube come first, since they take least wood and least room. They depend
 * on the space only through its bounds, so that a larger space loses no shape except those at a bound.
 */
export function shapesFor({ space }: Job, beyond: boolean): Shape[] {
  const full = [space.width, space.height, space.depth].map((edge) => edge - 2 * space.panelThickness);
  const parts = beyond ? COARSE : BOTH_WAYS;
  if (space.shape) return inOneEdge(space.shape.open, full, beyond);
  const proportions = parts
    .flatMap((wide) => parts.map((high) => [wide, high, -wide - high] as const))
    .sort((a, b) => Math.hypot(...a) - Math.hypot(...b))
    .map((octaves) => Float64Array.from(octaves, (part) => 2 ** part));
  const held = beyond ? HELD : [7];
  return proportions.flatMap((proportion) =>
    held.map((bits) => ({
      proportion,
      most: Float64Array.from(full, (edge, axis) => ((bits >> axis) & 1 ? edge : Infinity)),
      held: bits,
      free: beyond,
      full,
    })),
  );
}

/** The one shape of a box whose other edges are exact: it has any length, or that of the space. */
function inOneEdge(open: keyof typeof AXES, full: readonly number[], beyond: boolean): Shape[] {
  const bit = 1 << AXES[open];
  return (beyond ? [0, bit] : [7]).map((held) => ({
    proportion: Float64Array.of(1, 1, 1),
    most: Float64Array.from(full, (edge, axis) => (axis === AXES[open] && held === 0 ? Infinity : edge)),
    held,
    free: beyond,
    full,
  }));
}

/** The least share of its exact edges that a box of the lattice must fill: about a step of a coarse lattice. */
const LOOSE = 0.88;

/** The shapes that differ when one edge is given: the others are all in the ratio of the two that are left. */
export const shapesAcross = (edge: number, shapes: readonly Shape[]): Shape[] =>
  shapes.filter(({ proportion, held, free }) => proportion[edge] === 1 && (!free || ((held >> edge) & 1) === 0));

/**
 * Inner edges of a shape for an inner volume, into `out`. An edge beyond its bound is put at the bound, and the others share
 * what is left. `false` where the bounds allow no such box. Only the free edges are worked out, given as bits; the others
 * stand in `out`.
 */
export function edgesOf(
  { proportion, most }: Shape,
  least: readonly [number, number, number],
  volume: number,
  out: Float64Array,
  edges = 0b111,
): boolean {
  let left = volume;
  let free = edges;
  for (let axis = 0; axis < 3; axis++) if (!((free >> axis) & 1)) left /= out[axis]!;
  for (;;) {
    let share = 1;
    let count = 0;
    for (let axis = 0; axis < 3; axis++) {
      if ((free >> axis) & 1) {
        share *= proportion[axis]!;
        count++;
      }
    }
    // Where every edge is exact, a box of the lattice may hold somewhat less than they leave.
    if (count === 0)
      return left < 1 + 1e-9 && left > (most.every((edge, axis) => edge === least[axis]) ? LOOSE : 1 - 1e-9);
    const scale = count === 3 ? Math.cbrt(left / share) : count === 2 ? Math.sqrt(left / share) : left / share;
    let over = -1;
    let worst = 1;
    // The edge furthest beyond its bound is set first, since what it leaves decides the others.
    for (let axis = 0; axis < 3; axis++) {
      if (!((free >> axis) & 1)) continue;
      const edge = scale * proportion[axis]!;
      out[axis] = edge;
      const upper = most[axis]!;
      const lower = least[axis]!;
      if (edge <= upper && edge >= lower) continue;
      const beyond = Math.max(edge / upper, lower / edge);
      if (beyond > worst * (1 + 1e-12)) {
        worst = beyond;
        over = axis;
      }
    }
    if (over < 0) return true;
    out[over] = out[over]! > most[over]! ? most[over]! : least[over]!;
    left /= out[over]!;
    free &= ~(1 << over);
  }
}
