import { cellTable } from './cell-table.js';

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
 * at most 500 cells of equal cost in one crossing. `cost` must not keep the cell that it is given.
 *
 * @source hooke1961 direct search, here with pairs of axes for diagonal valleys
 * @example descend(([x]) => (x - 5) ** 2, [0], { lower: [-100], upper: [100], firstStep: 16 }).cell // [5]
 */
export function descend(
  cost: (cell: readonly number[]) => number,
  start: readonly number[],
  { lower, upper, firstStep }: { lower: readonly number[]; upper: readonly number[]; firstStep: number },
): Found {
  const axes = start.length;
  const known = cellTable(axes);
  const outside = (cell: readonly number[]): boolean => {
    for (let axis = 0; axis < axes; axis++) {
      if (cell[axis]! < lower[axis]! || cell[axis]! > upper[axis]!) return true;
    }
    return false;
  };
  const ask = (cell: readonly number[]): number => {
    if (outside(cell)) return Infinity;
    const before = known.get(cell);
    if (before !== undefined) return before;
    if (known.count() >= mostEvaluations) return Infinity;
    const value = cost(cell);
    known.put(cell, value);
    return value;
  };
  /** The cell that is looked at: one array, written again for each look. */
  const looked = [...start];
  const moved = (cell: readonly number[], direction: Direction, steps: number): readonly number[] => {
    for (let axis = 0; axis < axes; axis++) looked[axis] = cell[axis]! + direction[axis]! * steps;
    return looked;
  };
  const directions = directionsOf(axes);
  const single = directions.slice(0, 2 * axes);

  let best: Found = { cell: start, cost: cost(start) };
  known.put(start, best.cost);
  const take = (cell: readonly number[]): boolean => {
    const value = ask(cell);
    if (!(value < best.cost)) return false;
    best = { cell: [...cell], cost: value };
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
    const change = single.map(foretold);
    for (let i = 0; i < single.length; i++) {
      const unit = single[i]!;
      const from = moved(best.cell, unit, 1).slice();
      for (let k = 0; k < single.length; k++) {
        if (i >> 1 === k >> 1) continue;
        const run = single[k]!;
        let times = 1;
        let least = Infinity;
        let first = Infinity;
        const look = (t: number): number => {
          const value = ask(moved(from, run, t));
          if (value < least) {
            times = t;
            least = value;
          }
          return value;
        };
        for (let t = 1; t <= nearRatio || change[i]! + t * change[k]! < 0; t *= 2) {
          if (outside(moved(from, run, t))) break;
          const value = look(t);
          if (t === 1) first = value;
          if (value < best.cost) break;
        }
        if (least < first && !(least < best.cost)) {
          for (let half = times / 2; half >= 1 && !(least < best.cost); half /= 2) {
            const middle = times;
            look(middle - half);
            look(middle + half);
          }
        }
        if (!take(moved(from, run, times))) continue;
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
    const seen = cellTable(axes);
    seen.put(best.cell, 1);
    for (let i = 0; i < level.length; i++) {
      for (const direction of single) {
        const cell = moved(level[i]!, direction, 1);
        if (take(cell)) return true;
        if (ask(cell) !== best.cost || seen.get(cell) !== undefined || level.length >= mostLevelCells) continue;
        seen.put(cell, 1);
        level.push([...cell]);
      }
    }
    return false;
  };

  stride(firstStep);
  while (slide() || cross()) stride(1);
  return best;
}
