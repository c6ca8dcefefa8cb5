import { NANOMETRE } from '@airspring/core/quantity';
import { areaOf, type Outline, type PlanePoint } from './outline.js';

/** The sides of a figure, each from a corner to the next. */
export const sidesOf = (outline: Outline): readonly (readonly [PlanePoint, PlanePoint])[] =>
  outline.map((corner, i) => [corner, outline[(i + 1) % outline.length]!]);

export const distance = ([ax, ay]: PlanePoint, [bx, by]: PlanePoint): number => Math.hypot(bx - ax, by - ay);

/**
 * The length around a figure.
 *
 * $$U = \sum_i \sqrt{(x_{i+1}-x_i)^2 + (y_{i+1}-y_i)^2}$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $x_i$, $y_i$ | m | corners |
 *
 * @validity any figure
 * @source own geometry of a polygon
 * @example perimeterOf([[0, 0], [0.3, 0], [0.3, 0.2], [0, 0.2]]) // 1
 */
export const perimeterOf = (outline: Outline): number =>
  sidesOf(outline).reduce((sum, [from, to]) => sum + distance(from, to), 0);

/**
 * The centroid of a figure: where a plate of it balances.
 *
 * $$x_c = \frac{1}{6A}\sum_i (x_i + x_{i+1})(x_i\,y_{i+1} - x_{i+1}\,y_i)$$
 *
 * The other coordinate follows in the same way.
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $x_i$, $y_i$ | m | corners |
 * | $A$ | m² | area |
 *
 * @validity figures whose sides do not cross
 * @source own derivation: Green's theorem on a polygon
 * @example centroidOf([[0, 0], [0.3, 0], [0.3, 0.2], [0, 0.2]]) // [0.15, 0.1]
 */
export function centroidOf(outline: Outline): PlanePoint {
  // Measured from the first corner, so that a figure far from the origin loses no digits.
  const [originX, originY] = outline[0]!;
  let x = 0;
  let y = 0;
  const shifted = outline.map(([ax, ay]): PlanePoint => [ax - originX, ay - originY]);
  for (const [[ax, ay], [bx, by]] of sidesOf(shifted)) {
    const twice = ax * by - bx * ay;
    x += (ax + bx) * twice;
    y += (ay + by) * twice;
  }
  const sixfold = 6 * areaOf(shifted);
  return [originX + x / sixfold, originY + y / sixfold];
}

/**
 * The least rectangle along the axes that holds a figure, by its lower left and its upper right corner, m.
 *
 * @validity figures with at least one corner
 * @source own derivation: the least and the greatest coordinate along each axis
 * @example boundsOf([[0, 0], [0.3, 0], [0.1, 0.2]]) // [[0, 0], [0.3, 0.2]]
 */
export function boundsOf(outline: Outline): readonly [least: PlanePoint, greatest: PlanePoint] {
  let [left, low] = outline[0]!;
  let [right, high] = outline[0]!;
  for (const [x, y] of outline) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return [
    [left, low],
    [right, high],
  ];
}

/** Whether a figure is its own rectangle along the axes. */
export function isRectangle(outline: Outline): boolean {
  const [least, greatest] = boundsOf(outline);
  const isAt = (corner: PlanePoint, k: 0 | 1) => Math.min(corner[k] - least[k], greatest[k] - corner[k]) < NANOMETRE;
  return outline.length === 4 && outline.every((corner) => isAt(corner, 0) && isAt(corner, 1));
}
