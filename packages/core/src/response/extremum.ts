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
    const [a, b, c] = [values[i - 1] as number, values[i] as number, values[i + 1] as number];
    if (sign * b > sign * a && sign * b >= sign * c) found.push(i);
  }
  return found;
};

/** Where the slope by ln f vanishes between the neighbours of a sample. Values alone would be a thousand times less accurate. */
export function extremumFrequency(grid: ArrayLike<number>, i: number, slope: (frequency: number) => number): number {
  const [low, high] = [grid[i - 1] as number, grid[i + 1] as number];
  const root = bracketedRoot(slope, low, high, 1e-12 * high);
  return root.ok ? root.x : (grid[i] as number);
}

/** Extrema of sampled values, placed where their slope vanishes. */
export const extrema = (
  grid: ArrayLike<number>,
  values: ArrayLike<number>,
  sign: 1 | -1,
  value: (frequency: number) => number,
  slope: (frequency: number) => number,
): readonly Extremum[] =>
  tops(values, sign).map((i) => {
    const frequency = extremumFrequency(grid, i, slope);
    return { frequency: si('frequency', frequency), value: value(frequency) };
  });
