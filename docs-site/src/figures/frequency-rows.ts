import { type FrequencyGrid, format } from '@airspring/core/quantity';

/** Rows of a table at every tenth frequency of a grid: the frequency, and what the others say of the i-th point. */
export const frequencyRows = (
  grid: FrequencyGrid,
  others: (i: number) => readonly string[],
): readonly (readonly string[])[] =>
  [...grid.keys()].filter((i) => i % 10 === 0).map((i) => [format('frequency', grid[i]!, 'Hz'), ...others(i)]);
