import type { Layout } from '@airspring/core/space';

/** An opening in the outer surface of a panel. */
export interface Opening {
  /** Sizes of a rectangle along the two axes of its face; 0 for a round opening. */
  readonly sizes: readonly [one: number, other: number];
  /** Radius of a round opening; 0 for a rectangle. */
  readonly radius: number;
  /** The centre of a round opening comes no nearer to an inner edge than this. */
  readonly margin: number;
}

/** Shares of a size that are no more than rounding. */
const ROUNDING = 1e-6;

/** Whether an opening can lie on a face between these inner edges. */
type FitsBeside = (inner: ArrayLike<number>, opening: Opening) => boolean;

/**
 * Whether an opening can lie on a face beside each body that can stand on no other face, when both are as far apart as the face
 * allows. Where it cannot, no vent fits there. Other bodies are not looked at. `one` and `other` are the axes of the face.
 *
 * @source own geometry of circles and rectangles
 */
export function compileBeside(
  { bodies, thickness, gap, edgeMargin, cutoutMargin }: Layout,
  face: number,
  one: number,
  other: number,
): FitsBeside {
  const inTheWay = bodies
    .filter(({ faces }) => faces.length === 1 && faces[0] === face)
    .map(({ outerDiameter, cutoutDiameter, edgeMargin: own = 0 }) => {
      const nearest = (axis: number) => {
        const panel = Math.max(thickness[2 * axis]!, thickness[2 * axis + 1]!);
        return Math.max(cutoutDiameter / 2 + cutoutMargin, outerDiameter / 2 + Math.max(edgeMargin, own) - panel);
      };
      return { nearestOne: nearest(one), nearestOther: nearest(other), apart: outerDiameter / 2 + gap };
    });
  return (inner, { sizes, radius, margin }) => {
    for (const { nearestOne, nearestOther, apart } of inTheWay) {
      const a = Math.max(0, inner[one]! - nearestOne - margin - sizes[0]);
      const b = Math.max(0, inner[other]! - nearestOther - margin - sizes[1]);
      if (Math.sqrt(a * a + b * b) < (apart + radius) * (1 - ROUNDING)) return false;
    }
    return true;
  };
}
