import { InputError } from '@airspring/core/fault';
import { factorMatrix, solveFactored } from '@airspring/core/numeric';

/** B ← A⁻¹ B for the equations of a network. Rows and columns of unlike units are brought to one size before. */
export function solveScaled(size: number, A: Float64Array, B: Float64Array, columns: number): void {
  const scales = new Float64Array(size).fill(1);
  for (let round = 0; round < 4; round++) {
    for (let i = 0; i < size; i++) {
      let most = 0;
      for (let k = 0; k < size; k++) most = Math.max(most, Math.abs(A[i * size + k]!));
      const by = 2 ** -Math.round(Math.log2(most));
      if (!(most > 0)) continue;
      for (let k = 0; k < size; k++) A[i * size + k]! *= by;
      for (let k = 0; k < columns; k++) B[i * columns + k]! *= by;
    }
    for (let k = 0; k < size; k++) {
      let most = 0;
      for (let i = 0; i < size; i++) most = Math.max(most, Math.abs(A[i * size + k]!));
      const by = 2 ** -Math.round(Math.log2(most));
      if (!(most > 0)) continue;
      scales[k]! *= by;
      for (let i = 0; i < size; i++) A[i * size + k]! *= by;
    }
  }
  const exchanges = new Int32Array(size);
  if (factorMatrix(size, A, exchanges) < 1e-13) {
    const expected = 'a network in which each store of energy has a state of its own, and nothing is shorted';
    const remedy = 'Join masses that move together, and put a resistance between what would jump.';
    throw new InputError([
      { code: 'inconsistent', path: 'network', got: 'stores that are tied together', expected, remedy },
    ]);
  }
  solveFactored(size, A, exchanges, B, columns);
  for (let i = 0; i < size; i++) for (let k = 0; k < columns; k++) B[i * columns + k]! *= scales[i]!;
}
