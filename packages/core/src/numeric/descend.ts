import type { Found } from './survey.js';

type Direction = readonly (readonly [axis: number, steps: number])[];

/** One step along each axis both ways, and along each pair of axes in the given ratios of steps. */
function directionsOf(axes: number, ratios: readonly number[]): Direction[] {
  const all = Array.from({ length: axes }, (_, axis) => axis);
  const single = all.flatMap((i): Direction[] => [[[i, 1]], [[i, -1]]]);
  const paired = all.flatMap((i) =>
    all.slice(i + 1).flatMap((k) =>
      ratios.flatMap((ratio) =>
        [ratio, -ratio].flatMap((steps): Direction[] => [
          [
            [i, 1],
            [k, steps],
          ],
          [
            [i, -1],
            [k, steps],
          ],
          ...(ratio === 1
            ? []
            : ([
                [
                  [i, steps],
                  [k, 1],
                ],
                [
                  [i, steps],
                  [k, -1],
                ],
              ] as const)),
        ]),
      ),
    ),
  );
  return [...single, ...paired];
}

/** Ratios of the second walk: units of unlike axes have no common measure, and a valley may be as narrow as one unit. */
const SKEW = [1, 2, 4, 9] as const;

/**
 * Walks downhill on whole numbers: from `start` it tries every step of the current size along each axis and along each
 * pair of axes, takes the best, and halves the size when none is better; then once more with pairs of unequal steps, for
 * valleys along a hard limit. Ends in a cell that no step of one unit improves. Deterministic. A cell outside `lower` to
 * `upper` is not tried.
 *
 * @source hooke1961 direct search, here with pairs of axes for valleys that lie askew
 * @example descend(([x]) => (x - 5) ** 2, [0], { lower: [-100], upper: [100], firstStep: 16 }).cell // [5]
 */
export function descend(
  cost: (cell: readonly number[]) => number,
  start: readonly number[],
  { lower, upper, firstStep }: { lower: readonly number[]; upper: readonly number[]; firstStep: number },
): Found {
  let best: Found = { cell: start, cost: cost(start) };
  const walk = (directions: readonly Direction[], first: number) => {
    for (let step = first; step >= 1; ) {
      const from = best;
      for (const direction of directions) {
        const cell = [...from.cell];
        for (const [axis, steps] of direction) cell[axis] = (cell[axis] as number) + steps * step;
        if (cell.some((value, axis) => value < (lower[axis] as number) || value > (upper[axis] as number))) continue;
        const value = cost(cell);
        if (value < best.cost) best = { cell, cost: value };
      }
      if (best === from) step = Math.floor(step / 2);
    }
  };
  walk(directionsOf(start.length, [1]), firstStep);
  walk(directionsOf(start.length, SKEW), 2);
  return best;
}
