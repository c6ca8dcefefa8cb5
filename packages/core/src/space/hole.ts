import { type Length, si } from '../quantity/index.js';
import type { Face } from './cuboid.js';
import { inwards } from './placement.js';
import { axisOf, faceName, type Solid } from './solids.js';

/** A point, measured from the left, bottom, front outer edge. */
export type Point = readonly [Length, Length, Length];

/** A hole in a panel, given by its centre on the outer surface. */
export type Hole = {
  readonly part: Exclude<Solid['part'], 'clearance' | 'board'>;
  readonly face: Face;
  readonly centre: Point;
} & (
  | { readonly form: 'circle'; readonly diameter: Length }
  /** Edges along x, y, z; 0 across the panel. */
  | { readonly form: 'rectangle'; readonly edges: Point }
);

export const roundHole = (part: Hole['part'], face: number, centre: Point, diameter: number): Hole => ({
  part,
  face: faceName(face),
  centre,
  form: 'circle',
  diameter: si('length', diameter),
});

/** A point on the outer surface of a face, measured from the outer edges. */
export const onFace = (
  centre: readonly number[],
  face: number,
  inner: readonly number[],
  thickness: readonly number[],
): Point => {
  const outside = inwards(face, inner[axisOf(face)]!, -thickness[face]!);
  const at = (axis: 0 | 1 | 2) =>
    si('length', (axis === axisOf(face) ? outside : centre[axis]!) + thickness[2 * axis]!);
  return [at(0), at(1), at(2)];
};
