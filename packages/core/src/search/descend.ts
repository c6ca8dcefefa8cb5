import type { Found } from './survey.js';

/**
 * Walks downhill on whole numbers: from `start` it tries every step of the current size along each axis and along each
 * pair of axes, takes the best, and halves the size when none is better. Ends in a cell that no step of one unit improves.
 * Deterministic. A cell outside `lower` to `upper` is not tried.
 *
 * @source hooke1961 direct search, here with pairs of axes for valleys that lie askew
 * @example descend(([x]) => (x - 5) ** 2, [0], { lower: [-100], upper: [100], firstStep: 16 }).cell // [5]
 */
export function descend(
  cost: (cell: readonly number[]) => number,
  start: readonly number[],
  { lower, upper, firstStep }: { lower: readonly number[]; upper: readonly number[]; firstStep: number },
): Found {
  const axes = start.map((_, axis) => axis);
  const single = axes.flatMap((i) => [[[i, 1]], [[i, -1]]] as const);
  const paired = axes.flatMap((i) =>
    axes.slice(i + 1).flatMap((k) => [1, -1].flatMap((a) => [1, -1].map((b) => [[i, a], [k, b]] as const))),
  );
  const directions: readonly (readonly (readonly [number, number])[])[] = [...single, ...paired];
  let best: Found = { cell: start, cost: cost(start) };
  for (let step = firstStep; step >= 1; ) {
    const from = best;
    for (const direction of directions) {
      const cell = [...from.cell];
      for (const [axis, sign] of direction) cell[axis] = (cell[axis] as number) + sign * step;
      if (cell.some((value, axis) => value < (lower[axis] as number) || value > (upper[axis] as number))) continue;
      const value = cost(cell);
      if (value < best.cost) best = { cell, cost: value };
    }
    if (best === from) step = Math.floor(step / 2);
  }
  return best;
}
