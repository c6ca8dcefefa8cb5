import { factorMatrix, solveFactored } from './linear-system.js';

/** A gradient below this part of the greatest one is rounding. */
const ROUNDING = 1e-10;

/**
 * Least squares with unknowns that are not negative, by the active-set method: unknowns are freed one by one where the sum of
 * squares falls most, and held at zero again when they would turn negative.
 *
 * $$ \min_{x \ge 0} \lVert A x - b \rVert^2 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A$ | `a` | any | by rows, one row for each number of `b` |
 * | $b$ | `b` | any | right-hand side |
 *
 * @validity columns that are not nearly dependent: the normal equations square their condition
 * @neglects nothing beyond rounding
 * @returns $x$
 * @source lawson1974 ch. 23 (algorithm NNLS)
 * @example nonNegativeLeastSquares(2, Float64Array.of(1, 0, 0, 1), Float64Array.of(3, -1)) // [3, 0]
 */
export function nonNegativeLeastSquares(unknowns: number, a: Float64Array, b: Float64Array): Float64Array {
  // Columns of length one, so that gradients of unknowns of any unit compare.
  const size = new Float64Array(unknowns);
  for (let i = 0; i < a.length; i++) size[i % unknowns]! += a[i]! ** 2;
  const scale = size.map((sum) => (sum > 0 ? 1 / Math.sqrt(sum) : 0));
  const normal = new Float64Array(unknowns * unknowns);
  const right = new Float64Array(unknowns);
  for (let row = 0; row < b.length; row++) {
    for (let i = 0; i < unknowns; i++) {
      const one = a[row * unknowns + i]! * scale[i]!;
      right[i]! += one * b[row]!;
      for (let j = 0; j < unknowns; j++) normal[i * unknowns + j]! += one * a[row * unknowns + j]! * scale[j]!;
    }
  }
  const x = new Float64Array(unknowns);
  const free = new Set<number>();
  const least = ROUNDING * Math.max(...right.map(Math.abs));
  const gradient = (i: number) => {
    let sum = right[i]!;
    for (let j = 0; j < unknowns; j++) sum -= normal[i * unknowns + j]! * x[j]!;
    return sum;
  };
  for (let turn = 0; turn < 3 * unknowns; turn++) {
    const held = [...x.keys()].filter((i) => !free.has(i) && scale[i]! > 0);
    const best = held.reduce((most, i) => (most < 0 || gradient(i) > gradient(most) ? i : most), -1);
    if (best < 0 || !(gradient(best) > least)) break;
    free.add(best);
    for (let wanted = solvedFor([...free], unknowns, normal, right); ; ) {
      const negative = [...free].filter((i) => !(wanted[i]! > 0));
      if (negative.length === 0) {
        x.set(wanted);
        break;
      }
      const share = Math.min(1, ...negative.map((i) => x[i]! / (x[i]! - wanted[i]!)));
      for (const i of free) x[i]! += share * (wanted[i]! - x[i]!);
      for (const i of negative) {
        if (x[i]! > ROUNDING * Math.abs(wanted[i]!)) continue;
        x[i] = 0;
        free.delete(i);
      }
      wanted = solvedFor([...free], unknowns, normal, right);
    }
  }
  return x.map((value, i) => value * scale[i]!);
}

/** The least squares of the free unknowns alone; the others are zero. */
function solvedFor(free: readonly number[], unknowns: number, normal: Float64Array, right: Float64Array): Float64Array {
  const n = free.length;
  const matrix = Float64Array.from(
    { length: n * n },
    (_, k) => normal[free[Math.floor(k / n)]! * unknowns + free[k % n]!]!,
  );
  const wanted = Float64Array.from(free, (i) => right[i]!);
  const exchanges = new Int32Array(n);
  const all = new Float64Array(unknowns);
  if (n === 0 || !(factorMatrix(n, matrix, exchanges) > 0)) return all;
  solveFactored(n, matrix, exchanges, wanted, 1);
  free.forEach((i, k) => {
    all[i] = wanted[k]!;
  });
  return all;
}
