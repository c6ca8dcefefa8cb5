import { compileLumped, type Network, type StateSpace, valuesOf } from '@airspring/core/network';
import { polynomialRoots } from '@airspring/core/numeric';
import type { Mode } from './mode.js';
import { agrees } from './mode-agreement.js';
import type { OutputRow } from './output-rows.js';
import { shifted } from './shifted-states.js';

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
  const compiled = compileLumped(network.topology);
  const { polynomials } = compiled?.network(valuesOf(compiled.slots, network.values)) ?? {};
  if (polynomials === undefined) return undefined;
  const { coefficients, width, scale } = polynomials;
  const denominator = coefficients.slice(0, width);
  const degree = denominator.findLastIndex((value) => value !== 0);
  // Fewer where two springs that move together keep a state that nothing reaches.
  if (degree > size) return undefined;
  const { re, im } = polynomialRoots(denominator.subarray(0, degree + 1));
  return [...re].flatMap((x, i) => (im[i]! < 0 ? [] : [{ re: x * scale, im: im[i]! * scale }]));
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
