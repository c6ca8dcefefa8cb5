/** Pivots and remainders below this part of the largest entry are rounding. */
const ROUNDING = 1e-10;

/**
 * A solution of M x = b with as many equations as unknowns. Some equations may be redundant: the unknowns that this leaves free are 0.
 * `undefined` where the equations contradict each other. By elimination with the largest of all pivots, after rows and columns of
 * unlike units are brought to one size.
 */
export function consistentSolution(
  n: number,
  matrix: ArrayLike<number>,
  right: ArrayLike<number>,
): Float64Array | undefined {
  const [a, b] = [Float64Array.from(matrix), Float64Array.from(right)];
  const scales = equilibrate(n, a, b);
  const columns = Array.from({ length: n }, (_, k) => k);
  const size = Math.max(...b.map(Math.abs), Number.MIN_VALUE);
  let rank = 0;
  for (; rank < n; rank++) {
    let [best, row, column] = [ROUNDING, -1, -1];
    for (let i = rank; i < n; i++)
      for (let k = rank; k < n; k++) {
        const value = Math.abs(a[i * n + columns[k]!]!);
        if (value > best) [best, row, column] = [value, i, k];
      }
    if (row < 0) break;
    [columns[rank], columns[column]] = [columns[column]!, columns[rank]!];
    for (let k = 0; k < n; k++) [a[rank * n + k], a[row * n + k]] = [a[row * n + k]!, a[rank * n + k]!];
    [b[rank], b[row]] = [b[row]!, b[rank]!];
    const pivot = columns[rank]!;
    for (let i = 0; i < n; i++) {
      if (i === rank) continue;
      const factor = a[i * n + pivot]! / a[rank * n + pivot]!;
      for (let k = 0; k < n; k++) a[i * n + k]! -= factor * a[rank * n + k]!;
      b[i]! -= factor * b[rank]!;
    }
  }
  for (let i = rank; i < n; i++) if (Math.abs(b[i]!) > ROUNDING * size) return undefined;
  const x = new Float64Array(n);
  for (let i = 0; i < rank; i++) x[columns[i]!] = (b[i]! / a[i * n + columns[i]!]!) * scales[columns[i]!]!;
  return x;
}

/** Multiplies rows and columns by powers of two until the largest of each is near 1; gives the factors of the columns. */
function equilibrate(n: number, a: Float64Array, b: Float64Array): Float64Array {
  const scales = new Float64Array(n).fill(1);
  const factor = (at: (k: number) => number): number => {
    let most = 0;
    for (let k = 0; k < n; k++) most = Math.max(most, Math.abs(a[at(k)]!));
    return most > 0 ? 2 ** -Math.round(Math.log2(most)) : 1;
  };
  for (let round = 0; round < 4; round++) {
    for (let i = 0; i < n; i++) {
      const by = factor((k) => i * n + k);
      for (let k = 0; k < n; k++) a[i * n + k]! *= by;
      b[i]! *= by;
    }
    for (let k = 0; k < n; k++) {
      const by = factor((i) => i * n + k);
      for (let i = 0; i < n; i++) a[i * n + k]! *= by;
      scales[k]! *= by;
    }
  }
  return scales;
}
