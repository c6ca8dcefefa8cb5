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

/**
 * Whether an opening can lie on a face beside each body that can stand on no other face, when both are as far apart as the face
 * allows. Where it cannot, no vent fits there. Other bodies are not looked at.
 *
 * @source own geometry of circles and rectangles
 */
export function besideBodies(
  { bodies, thickness, gap, edgeMargin, cutoutMargin }: Layout,
  inner: readonly [width: number, height: number, depth: number],
  face: number,
  axes: readonly [one: number, other: number],
  { sizes, radius, margin }: Opening,
): boolean {
  for (const { outerDiameter, cutoutDiameter, faces } of bodies) {
    if (faces.length !== 1 || faces[0] !== face) continue;
    let square = 0;
    for (let k = 0; k < 2; k++) {
      const axis = axes[k]!;
      const panel = Math.max(thickness[2 * axis]!, thickness[2 * axis + 1]!);
      const nearest = Math.max(cutoutDiameter / 2 + cutoutMargin, outerDiameter / 2 + edgeMargin - panel);
      square += Math.max(0, inner[axis]! - nearest - margin - sizes[k]!) ** 2;
    }
    if (Math.sqrt(square) < (outerDiameter / 2 + gap + radius) * (1 - ROUNDING)) return false;
  }
  return true;
}
