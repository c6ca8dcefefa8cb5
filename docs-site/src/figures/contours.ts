/** A stretch of a contour: from one place of the grid to another, in columns and rows. */
export type Stretch = readonly [x0: number, y0: number, x1: number, y1: number];

/**
 * Where a quantity on a grid has one value, straight between the points of the grid. Each square of four points is cut into two
 * triangles, so that no square can be read in two ways.
 */
export function contour(columns: number, rows: number, at: (column: number, row: number) => number, value: number) {
  const stretches: Stretch[] = [];
  const triangle = (...corners: readonly (readonly [number, number])[]) => {
    const crossings = corners.flatMap(([x, y], i) => {
      const [u, v] = corners[(i + 1) % 3] as readonly [number, number];
      const [from, to] = [at(x, y), at(u, v)];
      if (from >= value === to >= value) return [];
      const part = (value - from) / (to - from);
      return [x + part * (u - x), y + part * (v - y)];
    });
    if (crossings.length === 4) stretches.push(crossings as unknown as Stretch);
  };
  for (let x = 0; x + 1 < columns; x++)
    for (let y = 0; y + 1 < rows; y++) {
      // Most squares lie wholly on one side.
      const [a, b, c, d] = [at(x, y), at(x + 1, y), at(x, y + 1), at(x + 1, y + 1)];
      const above = Number(a >= value) + Number(b >= value) + Number(c >= value) + Number(d >= value);
      if (above === 0 || above === 4) continue;
      triangle([x, y], [x + 1, y], [x, y + 1]);
      triangle([x + 1, y], [x + 1, y + 1], [x, y + 1]);
    }
  return stretches;
}
