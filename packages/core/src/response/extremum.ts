import { bracketedRoot } from '../numeric/index.js';
import { type Frequency, si } from '../quantity/index.js';

/** A frequency and the value there. */
export interface Extremum {
  readonly frequency: Frequency;
  readonly value: number;
}

/** Places of the samples that are greater than the one before and no less than the one after; the two ends do not count. */
export const tops = (values: ArrayLike<number>, sign: 1 | -1 = 1): number[] => {
  const found: number[] = [];
  for (let i = 1; i < values.length - 1; i++) {
    const here = sign * values[i]!;
    if (here > sign * values[i - 1]! && here >= sign * values[i + 1]!) found.push(i);
  }
  return found;
};

/** Number of pieces in which the interval to the next sample is searched if it contains a top and a dip. */
const PIECES = 32;

/**
 * Where the slope by ln f vanishes next to a sample that is greater than its neighbours (sign 1), or less (−1). The slope gives this
 * place a thousand times more precisely than the values. At an end of the grid it is that end, unless the values turn inside.
 */
export function extremumFrequency(
  grid: ArrayLike<number>,
  i: number,
  sign: 1 | -1,
  slope: (frequency: number) => number,
): number {
  const at = grid[i]!;
  const uphill = sign * slope(at) > 0;
  const to = grid[uphill ? i + 1 : i - 1];
  if (to === undefined) return at;
  // First uphill to the top, then down to the next sample. If a dip follows at once, the slope is the same at both ends.
  const turned = (far: number) => sign * slope(far) > 0 !== uphill;
  for (let step = turned(to) ? PIECES : 1, near = at; step <= PIECES; step++) {
    const far = at + ((to - at) * step) / PIECES;
    if (turned(far)) {
      const root = bracketedRoot(slope, Math.min(near, far), Math.max(near, far), 1e-14 * at);
      return root.ok ? root.x : at;
    }
    near = far;
  }
  return at;
}

/** Frequencies of all tops (sign 1) or dips (−1) of sampled values, including those between an end of the grid and its neighbour. */
export function turns(
  grid: ArrayLike<number>,
  values: ArrayLike<number>,
  sign: 1 | -1,
  slope: (frequency: number) => number,
): number[] {
  const last = values.length - 1;
  const rises = (i: number, neighbour: number) => sign * values[i]! > sign * values[neighbour]!;
  const places = [...(rises(0, 1) ? [0] : []), ...tops(values, sign), ...(rises(last, last - 1) ? [last] : [])];
  return places.map((i) => extremumFrequency(grid, i, sign, slope)).filter((f) => f > grid[0]! && f < grid[last]!);
}

/** Extrema of sampled values, placed where their slope vanishes. */
export const extrema = (
  grid: ArrayLike<number>,
  values: ArrayLike<number>,
  sign: 1 | -1,
  value: (frequency: number) => number,
  slope: (frequency: number) => number,
): readonly Extremum[] =>
  turns(grid, values, sign, slope).map((frequency) => ({
    frequency: si('frequency', frequency),
    value: value(frequency),
  }));
