/** The best cell of a lattice for one objective: its indices and its cost. */
export interface Found {
  readonly cell: readonly number[];
  readonly cost: number;
}

/**
 * Visits every cell of a lattice, the last axis fastest, and keeps the cheapest cell for each of several objectives.
 * It is global, deterministic and needs no seed. It can miss only what lies between two cells, which {@link descend} finds.
 *
 * `evaluate(cell, costs)` fills in one cost for each objective. A cost of infinity or NaN rules the cell out. Of equal costs
 * the first is kept. The cells come in order, so the caller can cache work that depends only on the slow axes.
 *
 * @source common practice (exhaustive search)
 * @example survey([10, 10], 1, ([i, k], costs) => { costs[0] = (i - 3) ** 2 + (k - 7) ** 2; })[0].cell // [3, 7]
 */
export function survey(
  sizes: readonly number[],
  objectives: number,
  evaluate: (cell: Int32Array, costs: Float64Array) => void,
): readonly (Found | undefined)[] {
  const axes = sizes.length;
  const cell = new Int32Array(axes);
  const costs = new Float64Array(objectives);
  const least = new Float64Array(objectives).fill(Infinity);
  const best = Array.from({ length: objectives }, () => new Int32Array(axes));
  if (sizes.some((size) => !(size >= 1))) return best.map(() => undefined);
  for (let axis = axes - 1; axis >= 0; ) {
    evaluate(cell, costs);
    for (let k = 0; k < objectives; k++) {
      if (costs[k]! < least[k]!) {
        least[k] = costs[k]!;
        (best[k] as Int32Array).set(cell);
      }
    }
    for (axis = axes - 1; axis >= 0; axis--) {
      cell[axis] = cell[axis]! + 1;
      if (cell[axis]! < sizes[axis]!) break;
      cell[axis] = 0;
    }
  }
  return best.map((found, k) => {
    const cost = least[k]!;
    return cost < Infinity ? { cell: Array.from(found), cost } : undefined;
  });
}
