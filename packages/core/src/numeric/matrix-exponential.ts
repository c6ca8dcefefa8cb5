import { type Fault, refuse } from '../fault/index.js';
import { factorMatrix, solveFactored } from './linear-system.js';
import { unlessFinite, unlessFiniteColumn, unlessWhole } from './refusal.js';

const order = 8;

/**
 * Exponential of a small real matrix times a time. It is the exact time step of a linear system of differential equations.
 *
 * $$ e^{At} = \left[ D^{-1}(X)\, D(-X) \right]^{2^m},\quad X = At/2^m,\quad
 * D(X) = \sum_{k=0}^{8} \frac{(16-k)!\,8!}{16!\,k!\,(8-k)!} (-X)^k $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A$ | `a` | 1/s | n × n, by rows |
 * | $n$ | `n` | 1 | rows |
 * | $t$ | `time` | s | time step, 1 by default |
 *
 * Rows and columns are first balanced by exact powers of two. A state that mixes displacement and speed has entries many
 * decades apart, and without balancing the matrix would be halved and squared more often than necessary.
 *
 * @validity n up to 64; the result must be finite
 * @neglects nothing beyond rounding; the truncated part is below 1e-18 of the norm
 * @returns n × n, by rows, a new array
 * @throws InputError `not-finite`, `empty`, `inconsistent` (length), `out-of-range` (n, or the result overflows)
 * @source moler2003 §3 method 3
 * @example matrixExponential(2, [0, 1, -1, 0], Math.PI / 2) // 0, 1, -1, 0
 */
export function matrixExponential(n: number, a: ArrayLike<number>, time = 1): Float64Array {
  const whole = unlessWhole('n', n, 1, 64);
  refuse([
    ...whole,
    ...unlessFiniteColumn('a', a),
    ...unlessFinite('time', time),
    ...(whole.length === 0 && a.length > 0 && a.length !== n * n
      ? [
          {
            code: 'inconsistent' as const,
            path: 'a',
            got: a.length,
            expected: `${n * n} entries`,
            remedy: 'Give n rows of n entries, one after another.',
          },
        ]
      : []),
  ]);
  const x = Float64Array.from(a, (value) => value * time);
  const weights = balance(n, x);
  if (!Number.isFinite(rowNorm(n, x))) refuse([tooLarge(rowNorm(n, x))]);
  const halvings = Math.max(0, Math.ceil(Math.log2(rowNorm(n, x))) + 1);
  // Carried as e^X − I, so that a slow motion keeps its digits beside a fast one. Once all motion has decayed to a half,
  // e^X itself keeps them.
  const result = approximant(n, x, halvings);
  const addToDiagonal = (value: number) => {
    for (let i = 0; i < n; i++) result[i * (n + 1)]! += value;
  };
  let lessIdentity = 1;
  for (let k = 0; k < halvings; k++) {
    if (rowNorm(n, result, lessIdentity) < 0.5) {
      addToDiagonal(lessIdentity);
      lessIdentity = 0;
    }
    const square = product(n, result, result);
    for (let i = 0; i < n * n; i++) result[i] = 2 * lessIdentity * result[i]! + square[i]!;
  }
  addToDiagonal(lessIdentity);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) result[i * n + k] = (result[i * n + k]! * weights[i]!) / weights[k]!;
  if (!result.every(Number.isFinite)) refuse([tooLarge(rowNorm(n, x))]);
  return result;
}

const tooLarge = (got: number): Fault => ({
  code: 'out-of-range',
  path: 'a',
  got,
  expected: 'a matrix whose exponential is finite',
  remedy: 'Shorten the time.',
});

/** Padé approximant of order 8 of e^X − I at X = x / 2^halvings, D⁻¹(X) (D(−X) − D(X)). The norm of X is at most one half. */
function approximant(n: number, x: Float64Array, halvings: number): Float64Array {
  const half = Math.floor(halvings / 2);
  const scaled = x.map((value) => value * 2 ** -half * 2 ** (half - halvings));
  const denominator = scaled.map((_, i) => (i % (n + 1) === 0 ? 1 : 0));
  const numerator = new Float64Array(n * n);
  let power: Float64Array = Float64Array.from(denominator);
  let c = 1;
  for (let k = 1; k <= order; k++) {
    c *= (order - k + 1) / (k * (2 * order - k + 1));
    power = product(n, power, scaled);
    for (let i = 0; i < n * n; i++) {
      if (k % 2 === 1) numerator[i]! += 2 * c * power[i]!;
      denominator[i]! += (k % 2 === 0 ? c : -c) * power[i]!;
    }
  }
  // D(X) is never singular: the norm of X is at most one half, and D(0) is the identity.
  const exchanges = new Int32Array(n);
  factorMatrix(n, denominator, exchanges);
  solveFactored(n, denominator, exchanges, numerator, n);
  return numerator;
}

function product(n: number, a: Float64Array, b: Float64Array): Float64Array {
  const c = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const factor = a[i * n + j]!;
      for (let k = 0; k < n; k++) c[i * n + k]! += factor * b[j * n + k]!;
    }
  return c;
}

/** Largest sum of magnitudes in a row of x + diagonal · I. */
function rowNorm(n: number, x: Float64Array, diagonal = 0): number {
  let norm = 0;
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let k = 0; k < n; k++) sum += Math.abs(x[i * n + k]! + (i === k ? diagonal : 0));
    norm = Math.max(norm, sum);
  }
  return norm;
}

/** Replaces x by W⁻¹ x W, with W diagonal in powers of two, until rows and columns are of similar magnitude; returns W. */
function balance(n: number, x: Float64Array): Float64Array {
  const weights = new Float64Array(n).fill(1);
  for (let pass = 0, changed = true; changed && pass < 20; pass++) {
    changed = false;
    for (let i = 0; i < n; i++) {
      let row = 0;
      let column = 0;
      for (let k = 0; k < n; k++)
        if (k !== i) {
          row += Math.abs(x[i * n + k]!);
          column += Math.abs(x[k * n + i]!);
        }
      const exponent = Math.round((Math.log2(row) - Math.log2(column)) / 2);
      if (!Number.isFinite(exponent) || Math.abs(exponent) < 1 || Math.abs(exponent) > 500) continue;
      const w = 2 ** exponent;
      const next = weights[i]! * w;
      if (next < 1e-150 || next > 1e150) continue;
      weights[i] = next;
      changed = true;
      for (let k = 0; k < n; k++)
        if (k !== i) {
          x[i * n + k]! /= w;
          x[k * n + i]! *= w;
        }
    }
  }
  return weights;
}
