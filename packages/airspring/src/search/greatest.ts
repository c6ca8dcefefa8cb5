import type { ComplexColumn } from '@airspring/core/numeric';

/** |z| without the scaling in `hypot` for very large and small numbers, which takes five times as long. */
export function magnitude({ re, im }: ComplexColumn, i: number): number {
  const a = re[i]!;
  const b = im[i]!;
  return Math.sqrt(a * a + b * b);
}

/**
 * The greatest value of a column over a grid. A smooth curve has its top between two samples, so this is the top of the parabola
 * through the greatest sample and both neighbours over log f. `at` is the place in the grid of the column's first value. The logarithms
 * depend on the grid alone, and are worked out once.
 */
export function compileGreatest(grid: Float64Array): (values: Float64Array, at: number) => number {
  const lefts = grid.map((f, i) => Math.log((grid[i - 1] ?? f) / f));
  const rights = grid.map((f, i) => Math.log((grid[i + 1] ?? f) / f));
  return (values, at) => greatestOf(values, at, lefts, rights);
}

function greatestOf(values: Float64Array, at: number, lefts: Float64Array, rights: Float64Array): number {
  let top = 0;
  let b = values[0]!;
  for (let i = 1; i < values.length; i++) {
    const value = values[i]!;
    if (value > b) {
      b = value;
      top = i;
    }
  }
  if (top === 0 || top === values.length - 1) return b;
  const left = lefts[at + top]!;
  const right = rights[at + top]!;
  const fall = values[top - 1]! - b;
  const drop = values[top + 1]! - b;
  const curve = (fall / left - drop / right) / (left - right);
  const slope = drop / right - curve * right;
  return curve < 0 ? b - slope ** 2 / (4 * curve) : b;
}
