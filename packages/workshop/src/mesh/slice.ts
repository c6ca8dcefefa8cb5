import type { Outline } from '../outline/index.js';
import type { SpacePoint } from './extent.js';
import type { Mesh } from './mesh.js';

/** A plane with two axes of its own at right angles. */
export interface Plane {
  readonly origin: SpacePoint;
  readonly x: SpacePoint;
  readonly y: SpacePoint;
}

/**
 * The figures in which a plane cuts a solid, on the axes of the plane. Seen against x × y, edges of the solid run
 * counter-clockwise and those of its holes clockwise.
 *
 * @validity closed surfaces; a plane that meets no corner of the surface, otherwise corners count as above it
 * @source own derivation: the line between the two points at which a plane cuts the sides of a triangle, followed from triangle to triangle
 * @example sliceOf(tube, { origin: [0, 0, 0.05], x: [1, 0, 0], y: [0, 1, 0] }).map(areaOf) // outer area, and inner area below zero
 */
export function sliceOf({ corners, triangles }: Mesh, { origin, x, y }: Plane): readonly Outline[] {
  const normal = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]] as const;
  const count = corners.length / 3;
  const heights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    heights[i] =
      (corners[3 * i]! - origin[0]) * normal[0] +
      (corners[3 * i + 1]! - origin[1]) * normal[1] +
      (corners[3 * i + 2]! - origin[2]) * normal[2];
  }
  // From the side of a triangle through which the line enters it to the one through which it leaves.
  const next = new Map<number, number>();
  const keyOf = (a: number, b: number) => (a < b ? a * count + b : b * count + a);
  for (let t = 0; t < triangles.length; t += 3) {
    let [enters, leaves] = [-1, -1];
    for (let k = 0; k < 3; k++) {
      const [a, b] = [triangles[t + k]!, triangles[t + ((k + 1) % 3)]!];
      const [above, then] = [heights[a]! >= 0, heights[b]! >= 0];
      if (above && !then) leaves = keyOf(a, b);
      else if (!above && then) enters = keyOf(a, b);
    }
    if (enters >= 0) next.set(leaves, enters);
  }
  const pointOf = (key: number): readonly [number, number] => {
    const [a, b] = [Math.floor(key / count), key % count];
    const part = heights[a]! / (heights[a]! - heights[b]!);
    const at = [0, 1, 2].map(
      (k) => corners[3 * a + k]! + part * (corners[3 * b + k]! - corners[3 * a + k]!) - origin[k]!,
    );
    const along = (axis: SpacePoint) => at[0]! * axis[0] + at[1]! * axis[1] + at[2]! * axis[2];
    return [along(x), along(y)];
  };
  const figures: Outline[] = [];
  while (next.size > 0) {
    const figure: (readonly [number, number])[] = [];
    let key = next.keys().next().value as number | undefined;
    while (key !== undefined && next.has(key)) {
      figure.push(pointOf(key));
      const after = next.get(key)!;
      next.delete(key);
      key = after;
    }
    figures.push(figure);
  }
  return figures;
}
