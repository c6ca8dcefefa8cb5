/** The best cell of a lattice: its indices and its cost. */
export interface Found {
  readonly cell: readonly number[];
  readonly cost: number;
}

type Direction = readonly number[];

/** How many costs a walk may ask for: far more than a walk needs when each of its steps is a gain. */
const mostEvaluations = 20_000;
/** How many cells of equal cost a walk looks at before it gives up. */
const mostLevelCells = 500;
/** Pairs of steps up to this ratio are always tried, because in a rough valley single steps predict nothing. */
const nearRatio = 8;

/** A cost that rises this many times faster ahead than behind is taken for a limit. */
const steep = 8;

/** One step in both directions along each axis and along each pair of axes. */
function directionsOf(axes: number): readonly Direction[] {
  const along = (steps: readonly (readonly [axis: number, step: number])[]): Direction => {
    const direction = new Array<number>(axes).fill(0);
    for (const [axis, step] of steps) direction[axis] = step;
    return direction;
  };
  const signs = [1, -1] as const;
  const all = Array.from({ length: axes }, (_, axis) => axis);
  const single = all.flatMap((i) => signs.map((step) => along([[i, step]])));
  const paired = all.flatMap((i) =>
    all.slice(i + 1).flatMap((k) =>
      signs.flatMap((one) =>
        signs.map((other) =>
          along([
            [i, one],
            [k, other],
          ]),
        ),
      ),
    ),
  );
  return [...single, ...paired];
}

/**
 * Walks downhill on a lattice of whole numbers in three ways. When a later way finds a better cell, the walk returns to the first.
 *
 * 1. It tries a step along each axis and each pair of axes and takes the best. When none is better, it halves the step.
 * 2. It follows a sloping limit: one unit of one axis with 1, 2, 4, … units of another, then the numbers between them.
 *    Beyond 8 units it tries a pair only while the costs of the two single steps do not predict a loss.
 * 3. It crosses cells of equal cost to the nearest one that has a better neighbour.
 *
 * It ends in a cell that no step of one unit improves, and neither does such a step from any cell reached at equal cost. It
 * is deterministic. It evaluates each cell at most once, only cells from `lower` to `upper`, at most 20,000 cells in all and
 * at most 500 cells of equal cost in one crossing.
 *
 * @source hooke1961 direct search, here with pairs of axes for diagonal valleys
 * @example descend(([x]) => (x - 5) ** 2, [0], { lower: [-100], upper: [100], firstStep: 16 }).cell // [5]
 */
export function descend(
  cost: (cell: readonly number[]) => number,
  start: readonly number[],
  { lower, upper, firstStep }: { lower: readonly number[]; upper: readonly number[]; firstStep: number },
): Found {
  const known = new Map<string, number>();
  const ask = (cell: readonly number[]): number => {
    if (cell.some((value, axis) => value < lower[axis]! || value > upper[axis]!)) return Infinity;
    const name = cell.join();
    let value = known.get(name);
    if (value === undefined) {
      if (known.size >= mostEvaluations) return Infinity;
      value = cost(cell);
      known.set(name, value);
    }
    return value;
  };
  const moved = (cell: readonly number[], direction: Direction, steps: number) =>
    cell.map((value, axis) => value + direction[axis]! * steps);
  const axes = start.length;
  const directions = directionsOf(axes);
  const single = directions.slice(0, 2 * axes);

  let best: Found = { cell: start, cost: cost(start) };
  known.set(start.join(), best.cost);
  const take = (cell: readonly number[]): boolean => {
    const value = ask(cell);
    if (!(value < best.cost)) return false;
    best = { cell, cost: value };
    return true;
  };

  const stride = (first: number) => {
    for (let step = first; step >= 1; ) {
      const from = best;
      for (const direction of directions) take(moved(from.cell, direction, step));
      if (best === from) step = Math.floor(step / 2);
    }
  };

  /** The predicted cost of a step of one unit. Where a limit stands on one side, the other side gives the slope. */
  const foretold = (direction: Direction): number => {
    const ahead = ask(moved(best.cell, direction, 1)) - best.cost;
    const behind = ask(moved(best.cell, direction, -1)) - best.cost;
    if (ahead === Infinity && behind === Infinity) return 0;
    if (ahead > steep * behind) return -behind;
    return behind > steep * ahead ? ahead : (ahead - behind) / 2;
  };

  /** Tries one unit along one axis with 1, 2, 4, … along another, then the numbers on both sides of the best of these. */
  const slide = (): boolean => {
    const from = best.cell;
    const change = single.map(foretold);
    for (const [i, unit] of single.entries()) {
      for (const [k, run] of single.entries()) {
        if (i >> 1 === k >> 1) continue;
        const at = (times: number) => moved(moved(from, unit, 1), run, times);
        let [times, least, first] = [1, Infinity, Infinity];
        for (let t = 1; t <= nearRatio || change[i]! + t * change[k]! < 0; t *= 2) {
          const cell = at(t);
          if (cell.some((value, axis) => value < lower[axis]! || value > upper[axis]!)) break;
          const value = ask(cell);
          if (t === 1) first = value;
          if (value < least) [times, least] = [t, value];
          if (value < best.cost) break;
        }
        if (least < first && !(least < best.cost)) {
          for (let half = times / 2; half >= 1 && !(least < best.cost); half /= 2) {
            for (const t of [times - half, times + half]) {
              const value = ask(at(t));
              if (value < least) [times, least] = [t, value];
            }
          }
        }
        if (!take(at(times))) continue;
        // A pair of steps that led downhill once may do so again.
        const direction = unit.map((step, axis) => step + run[axis]! * times);
        for (let steps = 1; take(moved(best.cell, direction, steps)); ) steps *= 2;
        return true;
      }
    }
    return false;
  };

  /** Crosses cells of equal cost to the nearest one that has a better neighbour. */
  const cross = (): boolean => {
    const level = [best.cell];
    const seen = new Set([best.cell.join()]);
    for (let i = 0; i < level.length; i++) {
      for (const direction of single) {
        const cell = moved(level[i]!, direction, 1);
        if (take(cell)) return true;
        const name = cell.join();
        if (ask(cell) !== best.cost || seen.has(name) || level.length >= mostLevelCells) continue;
        seen.add(name);
        level.push(cell);
      }
    }
    return false;
  };

  stride(firstStep);
  while (slide() || cross()) stride(1);
  return best;
}
