/**
 * Factors a real square matrix in place, $PA = LU$, column by column with row exchanges; a kernel.
 *
 * The result is the smallest ratio of a pivot to the largest term that it was computed from. Its negative logarithm is the
 * number of digits lost to cancellation, whatever the units of rows and columns. The caller decides what is enough: 1e-12
 * leaves four digits. The result is 0 when a pivot vanishes or overflows. The factors are then incomplete and must not be used.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A$ | `a` | any | n × n, by rows; overwritten by L (unit diagonal left out) and U |
 * | $P$ | `exchanges` | 1 | row exchanged with row k in step k |
 *
 * @neglects nothing; checks nothing, allocates nothing
 * @returns smallest relative pivot, 1; 0 means singular
 * @source dlmf §3.2(i)
 * @example if (!factorMatrix(n, a, exchanges)) return impossible('singular', '…');
 */
export function factorMatrix(n: number, a: Float64Array, exchanges: Int32Array): number {
  let smallest = 1;
  for (let k = 0; k < n; k++) {
    let best = 0;
    let relative = 0;
    let row = k;
    for (let i = 0; i < n; i++) {
      let value = a[i * n + k]!;
      let largest = Math.abs(value);
      const until = Math.min(i, k);
      for (let j = 0; j < until; j++) {
        const term = a[i * n + j]! * a[j * n + k]!;
        value -= term;
        if (Math.abs(term) > largest) largest = Math.abs(term);
      }
      a[i * n + k] = value;
      if (i >= k && Math.abs(value) > best) {
        best = Math.abs(value);
        relative = best / largest;
        row = i;
      }
    }
    const inverse = 1 / a[row * n + k]!;
    if (!(relative > 0 && Math.abs(inverse) < Infinity)) return 0;
    if (relative < smallest) smallest = relative;
    exchanges[k] = row;
    if (row !== k)
      for (let j = 0; j < n; j++) {
        const kept = a[k * n + j]!;
        a[k * n + j] = a[row * n + j]!;
        a[row * n + j] = kept;
      }
    for (let i = k + 1; i < n; i++) a[i * n + k]! *= inverse;
  }
  return smallest;
}

/**
 * Solves $AX = B$ in place for several right-hand sides, with the factors of {@link factorMatrix}; a kernel.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $B$, $X$ | `b` | any | n × columns, by rows; overwritten by the solution |
 *
 * @neglects nothing; checks nothing, allocates nothing
 * @returns nothing
 * @source dlmf §3.2(i)
 * @example solveFactored(n, a, exchanges, b, 1)
 */
export function solveFactored(
  n: number,
  a: Float64Array,
  exchanges: Int32Array,
  b: Float64Array,
  columns: number,
): void {
  for (let c = 0; c < columns; c++) {
    for (let k = 0; k < n; k++) {
      const row = exchanges[k]!;
      const kept = b[row * columns + c]!;
      b[row * columns + c] = b[k * columns + c]!;
      b[k * columns + c] = kept;
    }
    for (let i = 1; i < n; i++) {
      let value = b[i * columns + c]!;
      for (let j = 0; j < i; j++) value -= a[i * n + j]! * b[j * columns + c]!;
      b[i * columns + c] = value;
    }
    for (let i = n - 1; i >= 0; i--) {
      let value = b[i * columns + c]!;
      for (let j = i + 1; j < n; j++) value -= a[i * n + j]! * b[j * columns + c]!;
      b[i * columns + c] = value / a[i * n + i]!;
    }
  }
}
