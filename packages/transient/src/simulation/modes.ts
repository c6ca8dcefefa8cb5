import { compileNetwork, type Network, type StateSpace } from '@airspring/core/network';
import {
  factorComplexMatrix,
  polynomialRoots,
  solveComplexFactored,
  solveComplexFactoredTransposed,
} from '@airspring/core/numeric';
import type { OutputRow } from './output-rows.js';

/** One natural motion e^(λt), or a pair with λ and its conjugate where `im` is above zero. */
export interface Mode {
  readonly re: number;
  readonly im: number;
  /** For each output what the motion contributes to it, r of r/(s − λ): real and imaginary parts. */
  readonly residues: readonly { readonly re: number; readonly im: number }[];
}

/** What may be lost where outputs are written as sums of modes, of their greatest size over frequency. */
const LOST = 1e-11;

/**
 * The natural motions of a network, with a share of each output:
 *
 * $$ C(sI - A)^{-1}B = \sum_i \frac{r_i}{s - \lambda_i},\quad r_i = \frac{(C v_i)(w_i^{\mathsf T} B)}{w_i^{\mathsf T} v_i} $$
 *
 * λ starts at the roots of the denominator of the network and is refined with its vectors v and w (inverse iteration). The sum is
 * compared with the states over ten decades. `undefined` where it loses digits, as with poles that coincide.
 */
export function modesOf(network: Network, space: StateSpace, rows: readonly OutputRow[]): readonly Mode[] | undefined {
  const starts = startsOf(network, space.size);
  if (starts === undefined) return undefined;
  const modes: Mode[] = [];
  for (const start of starts) {
    const mode = refined(space, rows, start.re, start.im);
    if (mode === undefined) return undefined;
    modes.push(mode);
  }
  return agrees(space, rows, modes) ? modes : undefined;
}

/** Roots of the denominator, one of each pair. */
function startsOf(network: Network, size: number) {
  const { polynomials } = compileNetwork(network);
  if (polynomials === undefined) return undefined;
  const { coefficients, width, scale } = polynomials;
  const denominator = coefficients.slice(0, width);
  const degree = denominator.findLastIndex((value) => value !== 0);
  if (degree !== size) return undefined;
  const { re, im } = polynomialRoots(denominator.subarray(0, degree + 1));
  return [...re].flatMap((x, i) => (im[i]! < 0 ? [] : [{ re: x * scale, im: im[i]! * scale }]));
}

/** Solves (A − λ I) x = b, or the transposed system, in place. */
function shifted({ size: n, A }: StateSpace, re: number, im: number) {
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

/** Both vectors of a mode, λ moved to where they put it, and the residues of each output. */
function refined(space: StateSpace, rows: readonly OutputRow[], re: number, im: number): Mode | undefined {
  const { size: n, A, B } = space;
  const vector = () => [Float64Array.from({ length: n }, (_, i) => 1 / (i + 1)), new Float64Array(n)] as const;
  const [[vr, vi], [wr, wi]] = [vector(), vector()];
  for (let round = 0; round < 6; round++) {
    // A hair off the root, so that the matrix has an inverse.
    const near = shifted(space, re * (1 + 4e-14), im * (1 + 4e-14));
    if (near === undefined) return undefined;
    near.solve(vr, vi);
    near.solveTransposed(wr, wi);
    normalised(vr, vi);
    normalised(wr, wi);
    // wᵀ A v / wᵀ v.
    let [ar, ai, br, bi] = [0, 0, 0, 0];
    for (let i = 0; i < n; i++) {
      let [x, y] = [0, 0];
      for (let k = 0; k < n; k++) {
        x += A[i * n + k]! * vr[k]!;
        y += A[i * n + k]! * vi[k]!;
      }
      ar += wr[i]! * x - wi[i]! * y;
      ai += wr[i]! * y + wi[i]! * x;
      br += wr[i]! * vr[i]! - wi[i]! * vi[i]!;
      bi += wr[i]! * vi[i]! + wi[i]! * vr[i]!;
    }
    const d = br * br + bi * bi;
    if (!(d > 0)) return undefined;
    const [nextRe, nextIm] = [(ar * br + ai * bi) / d, im === 0 ? 0 : (ai * br - ar * bi) / d];
    const moved = Math.hypot(nextRe - re, nextIm - im) / Math.hypot(re, im);
    [re, im] = [nextRe, nextIm];
    if (round < 1 || !(moved < 1e-12)) continue;
    let [ur, ui] = [0, 0];
    for (let i = 0; i < n; i++) {
      ur += wr[i]! * B[i]!;
      ui += wi[i]! * B[i]!;
    }
    // wᵀB / wᵀv, and c v of each row.
    const [gr, gi] = [(ur * br + ui * bi) / d, (ui * br - ur * bi) / d];
    const residues = rows.map(({ c }) => {
      let [x, y] = [0, 0];
      for (let i = 0; i < n; i++) {
        x += c[i]! * vr[i]!;
        y += c[i]! * vi[i]!;
      }
      return { re: x * gr - y * gi, im: x * gi + y * gr };
    });
    return { re, im, residues };
  }
  return undefined;
}

function normalised(re: Float64Array, im: Float64Array): void {
  let size = 0;
  for (let i = 0; i < re.length; i++) size = Math.max(size, Math.abs(re[i]!), Math.abs(im[i]!));
  for (let i = 0; i < re.length; i++) {
    re[i]! /= size;
    im[i]! /= size;
  }
}

/** Whether the modes give each output as the states do, from 1 mHz to 10 MHz. */
function agrees(space: StateSpace, rows: readonly OutputRow[], modes: readonly Mode[]): boolean {
  const off = rows.map(() => 0);
  const most = rows.map(() => 0);
  for (let decade = -3; decade <= 7; decade += 0.25) {
    const omega = 2 * Math.PI * 10 ** decade;
    const [xr, xi] = [Float64Array.from(space.B, (b) => -b), new Float64Array(space.size)];
    shifted(space, 0, omega)?.solve(xr, xi);
    rows.forEach(({ c }, row) => {
      let [re, im, sr, si] = [0, 0, 0, 0];
      for (let k = 0; k < space.size; k++) {
        re += c[k]! * xr[k]!;
        im += c[k]! * xi[k]!;
      }
      for (const { re: a, im: b, residues } of modes) {
        const r = residues[row] as { re: number; im: number };
        for (const sign of b === 0 ? [1] : [1, -1]) {
          const [p, q] = [-a, omega - sign * b];
          const d = p * p + q * q;
          sr += (r.re * p + sign * r.im * q) / d;
          si += (sign * r.im * p - r.re * q) / d;
        }
      }
      most[row] = Math.max(most[row]!, Math.hypot(re, im));
      off[row] = Math.max(off[row]!, Math.hypot(re - sr, im - si));
    });
  }
  return off.every((size, row) => size <= LOST * most[row]!);
}
