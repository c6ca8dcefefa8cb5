import type { Found } from './survey.js';

type Direction = readonly number[];

/** How often a walk may ask for a cost: far more than a walk needs that gains by each step. */
const mostEvaluations = 20_000;
/** How many cells of equal cost are looked at before a walk gives up. */
const mostLevelCells = 500;
/** Pairs of steps up to this ratio are always tried: a rough valley foretells nothing. */
const nearRatio = 8;

/** A cost that rises this many times faster ahead than behind is that of a limit. */
const steep = 8;

/** One step along each axis both ways, and along each pair of axes. */
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
 * Walks downhill on whole numbers, in three ways, each begun anew when a later one has found a better cell.
 *
 * 1. Steps along each axis and each pair of axes, the best of them taken; halved when none is better.
 * 2. Along a limit that slopes: one unit of one axis with 1, 2, 4, … units of another, and the numbers between them.
 *    Beyond 8 units a pair is tried only while the costs of its two steps alone do not foretell a loss.
 * 3. Over cells of equal cost, to the nearest that has a better one beside it.
 *
 * Ends in a cell that no step of one unit improves, nor such a step from a cell that is reached at equal cost. Deterministic.
 * No cell is asked twice, none outside `lower` to `upper`, and at most 20,000 are, 500 of equal cost in one crossing.
 *
 * @source hooke1961 direct search, here with pairs of axes for valleys that lie askew
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

  /** What a step of one unit is foretold to cost. Where a limit stands on one side, the other side tells the slope. */
  const foretold = (direction: Direction): number => {
    const ahead = ask(moved(best.cell, direction, 1)) - best.cost;
    const behind = ask(moved(best.cell, direction, -1)) - best.cost;
    if (ahead === Infinity && behind === Infinity) return 0;
    if (ahead > steep * behind) return -behind;
    return behind > steep * ahead ? ahead : (ahead - behind) / 2;
  };

  /** One unit along one axis with 1, 2, 4, … along another; then, about the best of these, the numbers between. */
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
        // What has led downhill once may do so farther.
        const direction = unit.map((step, axis) => step + run[axis]! * times);
        for (let steps = 1; take(moved(best.cell, direction, steps)); ) steps *= 2;
        return true;
      }
    }
    return false;
  };

  /** To the nearest cell with a better one beside it, over cells that cost the same. */
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
