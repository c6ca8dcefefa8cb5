/**
 * Factors a complex square matrix in place, $PA = LU$, column by column with row exchanges; a kernel.
 * It measures magnitudes as $|\mathrm{Re}| + |\mathrm{Im}|$. The result means the same as that of {@link factorMatrix}.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A$ | `re`, `im` | any | n × n, by rows; overwritten by L (unit diagonal left out) and U |
 * | $P$ | `exchanges` | 1 | row exchanged with row k in step k |
 *
 * @neglects nothing; checks nothing, allocates nothing
 * @returns smallest relative pivot, 1; 0 means singular, and the factors must not be used
 * @source dlmf §3.2(i)
 * @example if (!factorComplexMatrix(n, re, im, exchanges)) return impossible('singular', '…');
 */
export function factorComplexMatrix(n: number, re: Float64Array, im: Float64Array, exchanges: Int32Array): number {
  let smallest = 1;
  for (let k = 0; k < n; k++) {
    let best = 0;
    let relative = 0;
    let row = k;
    for (let i = 0; i < n; i++) {
      let x = re[i * n + k]!;
      let y = im[i * n + k]!;
      let largest = Math.abs(x) + Math.abs(y);
      const until = Math.min(i, k);
      for (let j = 0; j < until; j++) {
        const lr = re[i * n + j]!;
        const li = im[i * n + j]!;
        const ur = re[j * n + k]!;
        const ui = im[j * n + k]!;
        const tr = lr * ur - li * ui;
        const ti = lr * ui + li * ur;
        x -= tr;
        y -= ti;
        const size = Math.abs(tr) + Math.abs(ti);
        if (size > largest) largest = size;
      }
      re[i * n + k] = x;
      im[i * n + k] = y;
      const size = Math.abs(x) + Math.abs(y);
      if (i >= k && size > best) {
        best = size;
        relative = best / largest;
        row = i;
      }
    }
    if (!(relative > 0 && 1 / best < Infinity)) return 0;
    if (relative < smallest) smallest = relative;
    exchanges[k] = row;
    if (row !== k)
      for (let j = 0; j < n; j++) {
        const keptRe = re[k * n + j]!;
        const keptIm = im[k * n + j]!;
        re[k * n + j] = re[row * n + j]!;
        im[k * n + j] = im[row * n + j]!;
        re[row * n + j] = keptRe;
        im[row * n + j] = keptIm;
      }
    // Divided by its own magnitude before it is squared, so that very small or large units do not overflow.
    const pr = re[k * n + k]! / best;
    const pi = im[k * n + k]! / best;
    const d = best * (pr * pr + pi * pi);
    for (let i = k + 1; i < n; i++) {
      const x = re[i * n + k]!;
      const y = im[i * n + k]!;
      re[i * n + k] = (x * pr + y * pi) / d;
      im[i * n + k] = (y * pr - x * pi) / d;
    }
  }
  return smallest;
}

/**
 * Solves $AX = B$ in place for several right-hand sides, with the factors of {@link factorComplexMatrix}; a kernel.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $B$, $X$ | `bRe`, `bIm` | any | n × columns, by rows; overwritten by the solution |
 *
 * @neglects nothing; checks nothing, allocates nothing
 * @returns nothing
 * @source dlmf §3.2(i)
 * @example solveComplexFactored(n, re, im, exchanges, bRe, bIm, 1)
 */
export function solveComplexFactored(
  n: number,
  re: Float64Array,
  im: Float64Array,
  exchanges: Int32Array,
  bRe: Float64Array,
  bIm: Float64Array,
  columns: number,
): void {
  for (let c = 0; c < columns; c++) {
    for (let k = 0; k < n; k++) exchangeRows(k * columns + c, exchanges[k]! * columns + c, bRe, bIm);
    for (let i = 1; i < n; i++) subtractRow(re, im, i * n, 1, 0, i, bRe, bIm, columns, c, i);
    for (let i = n - 1; i >= 0; i--) {
      subtractRow(re, im, i * n, 1, i + 1, n, bRe, bIm, columns, c, i);
      divide(bRe, bIm, i * columns + c, re[i * n + i]!, im[i * n + i]!);
    }
  }
}

/**
 * Solves $A^{\mathsf T} X = B$ (transposed, not conjugated) in place with the factors of {@link factorComplexMatrix}; a
 * kernel. A gradient needs it for its adjoint system.
 *
 * @neglects nothing; checks nothing, allocates nothing
 * @returns nothing
 * @source dlmf §3.2(i)
 * @example solveComplexFactoredTransposed(n, re, im, exchanges, bRe, bIm, 1)
 */
export function solveComplexFactoredTransposed(
  n: number,
  re: Float64Array,
  im: Float64Array,
  exchanges: Int32Array,
  bRe: Float64Array,
  bIm: Float64Array,
  columns: number,
): void {
  for (let c = 0; c < columns; c++) {
    for (let i = 0; i < n; i++) {
      subtractRow(re, im, i, n, 0, i, bRe, bIm, columns, c, i);
      divide(bRe, bIm, i * columns + c, re[i * n + i]!, im[i * n + i]!);
    }
    for (let i = n - 2; i >= 0; i--) subtractRow(re, im, i, n, i + 1, n, bRe, bIm, columns, c, i);
    for (let k = n - 1; k >= 0; k--) exchangeRows(k * columns + c, exchanges[k]! * columns + c, bRe, bIm);
  }
}

function exchangeRows(i: number, k: number, re: Float64Array, im: Float64Array): void {
  const keptRe = re[i]!;
  const keptIm = im[i]!;
  re[i] = re[k]!;
  im[i] = im[k]!;
  re[k] = keptRe;
  im[k] = keptIm;
}

/** b[i] −= Σ_j m[start + j · stride] b[j] in column c, with j running from `from` up to `until`. */
function subtractRow(
  re: Float64Array,
  im: Float64Array,
  start: number,
  stride: number,
  from: number,
  until: number,
  bRe: Float64Array,
  bIm: Float64Array,
  columns: number,
  c: number,
  i: number,
): void {
  let x = bRe[i * columns + c]!;
  let y = bIm[i * columns + c]!;
  for (let j = from; j < until; j++) {
    const mr = re[start + j * stride]!;
    const mi = im[start + j * stride]!;
    const vr = bRe[j * columns + c]!;
    const vi = bIm[j * columns + c]!;
    x -= mr * vr - mi * vi;
    y -= mr * vi + mi * vr;
  }
  bRe[i * columns + c] = x;
  bIm[i * columns + c] = y;
}

function divide(re: Float64Array, im: Float64Array, at: number, x: number, y: number): void {
  const size = Math.abs(x) + Math.abs(y);
  const pr = x / size;
  const pi = y / size;
  const d = size * (pr * pr + pi * pi);
  const a = re[at]!;
  const b = im[at]!;
  re[at] = (a * pr + b * pi) / d;
  im[at] = (b * pr - a * pi) / d;
}
