/** A point of a plane figure, m. */
export type PlanePoint = readonly [x: number, y: number];

/** A closed figure: its corners counter-clockwise, the last joined to the first. A curve is given as many short sides. */
export type Outline = readonly PlanePoint[];

/**
 * The area of a figure, by the sum over its sides; below zero where its corners run clockwise.
 *
 * $$A = \tfrac12 \sum_i (x_i\,y_{i+1} - x_{i+1}\,y_i)$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $x_i$, $y_i$ | m | corners |
 *
 * @validity figures whose sides do not cross
 * @source own derivation: Green's theorem on a polygon
 * @example areaOf([[0, 0], [0.3, 0], [0.3, 0.2], [0, 0.2]]) // 0.06
 */
export function areaOf(outline: Outline): number {
  let twice = 0;
  for (const [i, [x, y]] of outline.entries()) {
    const [nextX, nextY] = outline[(i + 1) % outline.length]!;
    twice += x * nextY - nextX * y;
  }
  return twice / 2;
}
