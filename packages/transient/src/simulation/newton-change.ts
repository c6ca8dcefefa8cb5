import { factorMatrix, solveFactored } from '@airspring/core/numeric';

/** What Newton's method works with: unknowns w, what they are without forces, the forces and their slopes, and K. */
export interface Newton {
  readonly w: Float64Array;
  readonly free: Float64Array;
  readonly phi: Float64Array;
  readonly slopes: Float64Array;
  readonly K: Float64Array;
  /** The step that is filled. */
  readonly change: Float64Array;
}

/** Room for m unknowns. */
export const newtonOf = (m: number): Newton => {
  const column = () => new Float64Array(m);
  return { w: column(), free: column(), phi: column(), slopes: column(), K: new Float64Array(m * m), change: column() };
};

/**
 * Fills the step of Newton's method for w = w₀ + K φ(w), of which each force depends on its own speed alone:
 * (I − K φ′) Δ = w₀ + K φ − w. Written out for one and two unknowns. Gives false where there is none.
 */
export function compileChange({ w, free, phi, slopes, K, change }: Newton): () => boolean {
  const m = w.length;
  const jacobian = new Float64Array(m * m);
  const exchanges = new Int32Array(m);
  return () => {
    if (m === 1) {
      change[0] = (free[0]! + K[0]! * phi[0]! - w[0]!) / (1 - K[0]! * slopes[0]!);
      return true;
    }
    if (m === 2) {
      const p = phi[0]!;
      const q = phi[1]!;
      const r0 = free[0]! + K[0]! * p + K[1]! * q - w[0]!;
      const r1 = free[1]! + K[2]! * p + K[3]! * q - w[1]!;
      const a = 1 - K[0]! * slopes[0]!;
      const b = -K[1]! * slopes[1]!;
      const c = -K[2]! * slopes[0]!;
      const d = 1 - K[3]! * slopes[1]!;
      const determinant = a * d - b * c;
      change[0] = (r0 * d - r1 * b) / determinant;
      change[1] = (a * r1 - c * r0) / determinant;
      return true;
    }
    for (let a = 0; a < m; a++) {
      let sum = free[a]! - w[a]!;
      for (let b = 0; b < m; b++) {
        sum += K[a * m + b]! * phi[b]!;
        jacobian[a * m + b] = (a === b ? 1 : 0) - K[a * m + b]! * slopes[b]!;
      }
      change[a] = sum;
    }
    if (factorMatrix(m, jacobian, exchanges) === 0) return false;
    solveFactored(m, jacobian, exchanges, change, 1);
    return true;
  };
}
