import { sidesOf } from './measures.js';
import type { Outline, PlanePoint } from './outline.js';

/** How far a point is from the nearest point of a side. */
function distanceToSide([x, y]: PlanePoint, [[ax, ay], [bx, by]]: readonly [PlanePoint, PlanePoint]): number {
  const [dx, dy] = [bx - ax, by - ay];
  const part = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(ax + part * dx - x, ay + part * dy - y);
}

/**
 * How far a point inside a figure is from its edge: the radius of the largest disc about the point that stays inside. Below zero for
 * a point outside, by its distance.
 *
 * $$r = \min_i d_i$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $d_i$ | m | distance to side i |
 *
 * @validity figures whose sides do not cross
 * @source own geometry of a polygon; inside and outside by the crossings of a ray
 * @example clearanceAt([[0, 0], [0.3, 0], [0.3, 0.2], [0, 0.2]], [0.1, 0.08]) // 0.08
 */
export function clearanceAt(outline: Outline, point: PlanePoint): number {
  const [x, y] = point;
  let inside = false;
  let least = Number.POSITIVE_INFINITY;
  for (const side of sidesOf(outline)) {
    const [[ax, ay], [bx, by]] = side;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    least = Math.min(least, distanceToSide(point, side));
  }
  return inside ? least : -least;
}
