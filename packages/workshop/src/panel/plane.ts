import type { Face } from '@airspring/core/space';
import { facesOn } from './box-edges.js';
import type { Side } from './piece.js';

/** How a board lies in the plane of its drawing. */
export interface Plane {
  /** The axes of the box across and up the drawing: 0 width, 1 height, 2 depth. */
  readonly axes: readonly [number, number];
  /** Whether they run the other way: the back is seen from behind. */
  readonly turned: readonly [boolean, boolean];
}

/** The six panels are seen from outside. */
const planes: Readonly<Record<Face, Plane>> = {
  left: { axes: [2, 1], turned: [true, false] },
  right: { axes: [2, 1], turned: [false, false] },
  bottom: { axes: [0, 2], turned: [false, true] },
  top: { axes: [0, 2], turned: [false, false] },
  front: { axes: [0, 1], turned: [false, false] },
  back: { axes: [0, 1], turned: [true, false] },
};

export const planeOf = (face: Face): Plane => planes[face];

/** A brace is seen from the right, from above or from the front. */
export const planeAcross = (axis: number): Plane => planes[axis === 2 ? 'front' : facesOn(axis)[1]];

/** The faces that the left, right, lower and upper edge of a drawing meet. */
export function facesAround({ axes: [across, up], turned: [left, down] }: Plane): Readonly<Record<Side, Face>> {
  const [a, b] = facesOn(across);
  const [c, d] = facesOn(up);
  return { left: left ? b : a, right: left ? a : b, bottom: down ? d : c, top: down ? c : d };
}

/** Where something is in the drawing of a board, from its place in the box. */
export function inPlane(
  { axes, turned }: Plane,
  least: readonly number[],
  greatest: readonly number[],
  at: readonly [across: number, up: number],
): readonly [number, number] {
  const along = (k: 0 | 1) => (turned[k] ? greatest[axes[k]]! - at[k] : at[k] - least[axes[k]]!);
  return [along(0), along(1)];
}
