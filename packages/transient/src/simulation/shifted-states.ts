import type { StateSpace } from '@airspring/core/network';
import { factorComplexMatrix, solveComplexFactored, solveComplexFactoredTransposed } from '@airspring/core/numeric';

/** Solves (A − λ I) x = b, or the transposed system, in place. */
export function shifted({ size: n, A }: StateSpace, re: number, im: number) {
  const [mr, mi] = [Float64Array.from(A), new Float64Array(n * n)];
  for (let i = 0; i < n; i++) {
    mr[i * (n + 1)]! -= re;
    mi[i * (n + 1)] = -im;
  }
  const exchanges = new Int32Array(n);
  if (!factorComplexMatrix(n, mr, mi, exchanges)) return undefined;
  return {
    solve: (xr: Float64Array, xi: Float64Array) => solveComplexFactored(n, mr, mi, exchanges, xr, xi, 1),
    solveTransposed: (xr: Float64Array, xi: Float64Array) =>
      solveComplexFactoredTransposed(n, mr, mi, exchanges, xr, xi, 1),
  };
}
