/** A symmetric matrix by rows. */
export type Matrix = readonly Float64Array[];

export const square = (n: number): Float64Array[] => Array.from({ length: n }, () => new Float64Array(n));

/** L of M = L Lᵀ, of a matrix that is symmetric and positive. */
function lowerOf(M: Matrix): Float64Array[] {
  const L = square(M.length);
  for (let i = 0; i < M.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = M[i]![j]!;
      for (let k = 0; k < j; k++) sum -= L[i]![k]! * L[j]![k]!;
      L[i]![j] = i === j ? Math.sqrt(sum) : sum / L[j]![j]!;
    }
  }
  return L;
}

/** Solves L x = b in place, for each row b of a matrix. */
function forwards(L: Matrix, rows: readonly Float64Array[]): void {
  for (const b of rows) {
    for (let i = 0; i < L.length; i++) {
      let sum = b[i]!;
      for (let k = 0; k < i; k++) sum -= L[i]![k]! * b[k]!;
      b[i] = sum / L[i]![i]!;
    }
  }
}

const transposed = (A: Matrix): Float64Array[] => A.map((_, i) => Float64Array.from(A, (row) => row[i]!));

const SWEEPS = 40;
/** Couplings below this, squared and over both values, turn nothing. */
const NOTHING = 1e-24;

/** Turns rows and columns of A by rotations until it is diagonal (Jacobi); the rows of V become the vectors. */
function diagonalise(A: readonly Float64Array[]): Float64Array[] {
  const n = A.length;
  const V = square(n);
  for (let i = 0; i < n; i++) V[i]![i] = 1;
  for (let sweep = 0, turns = 1; sweep < SWEEPS && turns > 0; sweep++) {
    turns = 0;
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        const coupling = A[p]![q]!;
        // Half of all pairs are a symmetric and an antisymmetric shape, which do not meet.
        if (coupling * coupling <= NOTHING * Math.abs(A[p]![p]! * A[q]![q]!)) continue;
        turns++;
        const theta = (A[q]![q]! - A[p]![p]!) / (2 * coupling);
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
        const c = 1 / Math.hypot(t, 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const row = A[k]!;
          const [x, y] = [row[p]!, row[q]!];
          row[p] = c * x - s * y;
          row[q] = s * x + c * y;
        }
        turn(A[p]!, A[q]!, c, s);
        turn(V[p]!, V[q]!, c, s);
      }
    }
  }
  return V;
}

function turn(one: Float64Array, other: Float64Array, c: number, s: number): void {
  for (let k = 0; k < one.length; k++) {
    const [x, y] = [one[k]!, other[k]!];
    one[k] = c * x - s * y;
    other[k] = s * x + c * y;
  }
}

/** A value λ and its vector, of K v = λ M v, with vᵀ M v = 1. */
export interface EigenPair {
  readonly value: number;
  readonly vector: Float64Array;
}

/** All pairs of K v = λ M v, the least value first. Both matrices are symmetric, M is positive. */
export function eigenPairs(K: Matrix, M: Matrix): readonly EigenPair[] {
  const L = lowerOf(M);
  // L⁻¹ K L⁻ᵀ has the same values.
  const half = K.map((row) => Float64Array.from(row));
  forwards(L, half);
  const reduced = transposed(half);
  forwards(L, reduced);
  const vectors = diagonalise(reduced);
  backwards(L, vectors);
  return vectors.map((vector, i) => ({ value: reduced[i]![i]!, vector })).sort((one, other) => one.value - other.value);
}

/** More vectors than are wanted turn towards the lowest faster. */
const SPARE = 4;
const [STEPS, SETTLED] = [80, 1e-10];

/** The lowest values of K v = λ M v, by turning a few vectors towards them (subspace iteration). Both matrices are positive. */
export function lowestValues(K: Matrix, M: Matrix, wanted: number): readonly number[] {
  const n = K.length;
  const block = Math.min(n, wanted + SPARE);
  const L = lowerOf(K);
  const ratio = (i: number) => K[i]![i]! / M[i]![i]!;
  const start = Array.from({ length: n }, (_, i) => i).sort((i, j) => ratio(i) - ratio(j));
  // A little of every shape is in each, so that none of the lowest is missed.
  let X = Array.from({ length: block }, (_, b) =>
    Float64Array.from({ length: n }, (__, i) => (i === start[b] ? 1 : 1e-3 * Math.sin(1 + 7 * b + 3 * i))),
  );
  let values: readonly number[] = [];
  for (let step = 0; step < STEPS; step++) {
    const loads = times(M, X);
    const Y = loads.map((load) => Float64Array.from(load));
    forwards(L, Y);
    backwards(L, Y);
    const pairs = eigenPairs(inner(Y, loads), inner(Y, times(M, Y)));
    X = pairs.map(({ vector }) => {
      const sum = new Float64Array(n);
      for (const [b, share] of vector.entries()) for (let i = 0; i < n; i++) sum[i]! += share * Y[b]![i]!;
      return sum;
    });
    const found = pairs.slice(0, wanted).map(({ value }) => value);
    const before = values;
    values = found;
    if (found.every((value, i) => Math.abs(value - before[i]!) <= SETTLED * value)) break;
  }
  return values;
}

/** M x for each row x. */
const times = (M: Matrix, rows: Matrix): Float64Array[] =>
  rows.map((x) =>
    Float64Array.from(M, (row) => {
      let sum = 0;
      for (let j = 0; j < row.length; j++) sum += row[j]! * x[j]!;
      return sum;
    }),
  );

const inner = (ones: Matrix, others: Matrix): Float64Array[] => times(others, ones);

/** Solves Lᵀ x = b in place, for each row b. */
function backwards(L: Matrix, rows: readonly Float64Array[]): void {
  for (const b of rows) {
    for (let r = b.length - 1; r >= 0; r--) {
      let sum = b[r]!;
      for (let k = r + 1; k < b.length; k++) sum -= L[k]![r]! * b[k]!;
      b[r] = sum / L[r]![r]!;
    }
  }
}
