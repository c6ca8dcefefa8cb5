import { NANOMETRE } from '../quantity/nanometre.js';
import type { Layout } from './fit-input.js';
import { overlappingShifts } from './overlap.js';
import type { View } from './placement.js';
import type { RoundBody } from './round-body.js';
import type { Scene, Stand } from './scene.js';
import { axisOf, type Block, emptyBlock, isFar, span } from './solids.js';
import { footMargin, type Walls } from './walls.js';

const range = new Float64Array(2);
const bare = emptyBlock();

/** Greatest number of places that are tried for one body on one face. */
export const MOST_PLACES = 512;

/** Most shifts by which a body touches the flange and both legs of a vent, in four corners of it. */
const MOST_SHIFTS = 32;

/** Writes a solid that is smaller by this much on all sides. */
export function smaller(block: Block, by: number): Block {
  bare.axis = block.axis;
  for (let k = 0; k < 3; k++) span(bare, k, block.low[k]! + by, block.high[k]! - by);
  return bare;
}

/**
 * Compiles the places to which a body moves from those at which it was tried: until it touches a body before it, the vent in a
 * corner, or a wall. Each function writes them after the first `count` places of the body, and returns how many there are then.
 */
export function compileMoves(
  layout: Layout,
  view: View,
  { stands }: Scene,
  limits: readonly (readonly [Float64Array, Float64Array])[],
  places: readonly Float64Array[],
  put: (i: number, s: number, one: number, two: number, first: number, second: number) => void,
  besideVent: (stand: Stand, k: number, shifts: Float64Array) => number,
) {
  const { gap, bodies } = layout;
  const shifts = new Float64Array(MOST_SHIFTS);

  /** Where a body just touches an earlier one, starting from its written place; one coordinate stays the same. */
  function touches(i: number, from: number, to: number, one: number, two: number, count: number): number {
    const at = places[i]!;
    let n = count;
    for (let p = 0; p < count; p++) {
      for (let s = from; s < to; s++) put(i, s, one, two, at[2 * p]!, at[2 * p + 1]!);
      for (let s = from; s < to; s++) {
        for (let o = 0; o < from; o++) {
          const [stand, other] = [stands[s]!, stands[o]!];
          for (let side = 0; side < 4; side++) {
            const k = side < 2 ? one : two;
            const met =
              stand.face === other.face
                ? overlappingShifts(smaller(stand.frame, gap), other.frame, k, range)
                : stand.inside && other.inside && overlappingShifts(stand.block, other.block, k, range);
            if (!met || n >= MOST_PLACES) continue;
            const by = range[side & 1]!;
            const first = at[2 * p]! + (k === one ? by : 0);
            const second = at[2 * p + 1]! + (k === two ? by : 0);
            const a = limits[i]![0];
            const b = limits[i]![1];
            if (first < a[0]! || first > a[1]! || second < b[0]! || second > b[1]!) continue;
            at[2 * n] = first;
            at[2 * n + 1] = second;
            n++;
          }
        }
      }
    }
    return n;
  }

  /** Where a body that starts at a corner of its limits and moves along one axis touches the vent in a corner. */
  function touchVent(i: number, from: number, to: number, one: number, two: number, count: number): number {
    const at = places[i]!;
    let n = count;
    for (let p = 0; p < 4; p++) {
      for (let s = from; s < to; s++) put(i, s, one, two, at[2 * p]!, at[2 * p + 1]!);
      for (let s = from; s < to; s++) {
        for (let side = 0; side < 2; side++) {
          const k = side === 0 ? one : two;
          const limit = limits[i]![side]!;
          const found = besideVent(stands[s]!, k, shifts);
          for (let m = 0; m < found && n < MOST_PLACES; m++) {
            const to = at[2 * p + side]! + shifts[m]!;
            if (to <= limit[0]! || to >= limit[1]!) continue;
            at[2 * n] = side === 0 ? to : at[2 * p]!;
            at[2 * n + 1] = side === 1 ? to : at[2 * p + 1]!;
            n++;
          }
        }
      }
    }
    return n;
  }

  /** A body, as wide as its place on the face. An interior keeps it free in its whole depth. */
  function withMargin({ outerDiameter, cutoutDiameter }: RoundBody, { face, block, inside }: Stand): Block {
    smaller(block, -footMargin(layout, face, (outerDiameter - cutoutDiameter) / 2));
    const normal = view.axes.indexOf(axisOf(face));
    const far = isFar(face) !== view.turned[normal];
    const thin = inside ? 0 : 2 * NANOMETRE;
    span(bare, normal, block.low[normal]! - (far ? thin : 0), block.high[normal]! + (far ? 0 : thin));
    return bare;
  }

  /** Where a body that starts from its written place and moves along one axis touches a wall. */
  function toWalls(walls: Walls, i: number, from: number, to: number, one: number, two: number, count: number): number {
    const at = places[i]!;
    let n = count;
    for (let p = 0; p < count; p++) {
      for (let s = from; s < to; s++) {
        put(i, s, one, two, at[2 * p]!, at[2 * p + 1]!);
        const wide = withMargin(bodies[i]!, stands[s]!);
        if (!walls.holds(wide)) continue;
        for (let side = 0; side < 4; side++) {
          const k = side & 1;
          const limit = limits[i]![k]!;
          const way = walls.way(wide, k === 0 ? one : two, side > 1);
          const moved = at[2 * p + k]! + (side > 1 ? -way : way);
          if (way <= NANOMETRE || moved <= limit[0]! || moved >= limit[1]! || n >= MOST_PLACES) continue;
          at[2 * n + k] = moved;
          at[2 * n + 1 - k] = at[2 * p + 1 - k]!;
          n++;
        }
      }
    }
    return n;
  }

  return { touches, touchVent, toWalls, withMargin };
}
