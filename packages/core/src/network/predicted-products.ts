import type { Equations } from './equations.js';

/**
 * How many products the determinant has: all its coefficients have one sign where no power comes back from the mechanical to
 * the electrical side with another, so that their sum is the determinant with every number and s at 1. An estimate elsewhere.
 */
export function predictedProducts({ size, stamps }: Equations): number {
  const matrix = new Float64Array(size * size);
  for (const { row, column, sign } of stamps) matrix[row * size + column] = matrix[row * size + column]! + sign;
  let determinant = 1;
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let row = k + 1; row < size; row++) {
      if (Math.abs(matrix[row * size + k]!) > Math.abs(matrix[pivot * size + k]!)) pivot = row;
    }
    for (let column = k; column < size; column++) {
      const kept = matrix[k * size + column]!;
      matrix[k * size + column] = matrix[pivot * size + column]!;
      matrix[pivot * size + column] = kept;
    }
    const top = matrix[k * size + k]!;
    if (top === 0) return 0;
    determinant *= Math.abs(top);
    for (let row = k + 1; row < size; row++) {
      const factor = matrix[row * size + k]! / top;
      if (factor === 0) continue;
      for (let column = k; column < size; column++) {
        matrix[row * size + column] = matrix[row * size + column]! - factor * matrix[k * size + column]!;
      }
    }
  }
  return determinant;
}
