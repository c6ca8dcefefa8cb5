import type { ComplexColumn } from '@airspring/core/numeric';

/** |z| without the scaling in `hypot` for very large and small numbers, which takes five times as long. */
export function magnitude({ re, im }: ComplexColumn, i: number): number {
  const a = re[i]!;
  const b = im[i]!;
  return Math.sqrt(a * a + b * b);
}

/**
 * The greatest value of a column. A smooth curve has its top between two samples, so this is the top of the parabola through
 * the greatest sample and both neighbours over log f. `at` is the place in the grid of the column's first value.
 */
export function greatestOf(values: Float64Array, grid: Float64Array, at: number): number {
  let top = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[top]!) top = i;
  const b = values[top]!;
  if (top === 0 || top === values.length - 1) return b;
  const middle = grid[at + top]!;
  const left = Math.log(grid[at + top - 1]! / middle);
  const right = Math.log(grid[at + top + 1]! / middle);
  const fall = values[top - 1]! - b;
  const drop = values[top + 1]! - b;
  const curve = (fall / left - drop / right) / (left - right);
  const slope = drop / right - curve * right;
  return curve < 0 ? b - slope ** 2 / (4 * curve) : b;
}
