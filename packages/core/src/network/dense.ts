import {
  type ComplexColumn,
  complexColumn,
  factorComplexMatrix,
  isRounding,
  solveComplexFactored,
  solveComplexFactoredTransposed,
} from '../numeric/index.js';
import type { Equations, Signed } from './equations.js';
import type { ListedColumns } from './listed-columns.js';

/** The matrix of the equations at one frequency, with room for its factors and solutions. */
export interface Dense {
  readonly size: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Sums of the magnitudes of the terms of each entry. */
  readonly sizeRe: Float64Array;
  readonly sizeIm: Float64Array;
  readonly rowScale: Float64Array;
  readonly exchanges: Int32Array;
  /** The solution, by unknown, and that of the transposed equations, by equation. */
  readonly solution: ComplexColumn;
  readonly adjoint: ComplexColumn;
}

/** Room for the equations of a number of unknowns. */
export const dense = (size: number): Dense => ({
  size,
  re: new Float64Array(size * size),
  im: new Float64Array(size * size),
  sizeRe: new Float64Array(size * size),
  sizeIm: new Float64Array(size * size),
  rowScale: new Float64Array(size),
  exchanges: new Int32Array(size),
  solution: complexColumn(size),
  adjoint: complexColumn(size),
});

/**
 * Writes the matrix at one frequency, divides each row by its largest entry (ohms and acoustic compliances differ by
 * ten powers of ten, and pivots are compared), and factors it with row exchanges. What is left of a sum that cancels to the
 * last bits, a mass against its spring, is rounding and no pivot. Listed elements are read at `index`.
 *
 * @returns the smallest relative pivot; 0 is singular
 */
export function factorDense(
  { size, stamps }: Equations,
  numbers: Float64Array,
  listed: readonly (ListedColumns | undefined)[],
  index: number,
  frequency: number,
  matrix: Dense,
): number {
  const { re, im, sizeRe, sizeIm, rowScale, exchanges } = matrix;
  const w = 2 * Math.PI * frequency;
  re.fill(0);
  im.fill(0);
  sizeRe.fill(0);
  sizeIm.fill(0);
  for (const { row, column, sign, symbol, power, listed: corner } of stamps) {
    const place = row * size + column;
    const table = corner === undefined ? undefined : listed[symbol]?.[corner];
    if (table !== undefined) {
      add(matrix, place, sign * table.re[index]!, sign * table.im[index]!);
      continue;
    }
    const value = symbol < 0 ? sign : sign * numbers[symbol]!;
    add(matrix, place, power === 0 ? value : 0, power === 0 ? 0 : power === 1 ? w * value : -value / w);
  }
  for (let place = 0; place < size * size; place++) {
    if (isRounding(re[place]!, sizeRe[place]!)) re[place] = 0;
    if (isRounding(im[place]!, sizeIm[place]!)) im[place] = 0;
  }
  for (let row = 0; row < size; row++) {
    let largest = 0;
    for (let k = row * size; k < (row + 1) * size; k++) {
      largest = Math.max(largest, Math.abs(re[k]!), Math.abs(im[k]!));
    }
    const unit = largest > 0 ? 1 / largest : 1;
    rowScale[row] = unit;
    for (let k = row * size; k < (row + 1) * size; k++) {
      re[k]! *= unit;
      im[k]! *= unit;
    }
  }
  return factorComplexMatrix(size, re, im, exchanges);
}

/** Solves the factored equations for the unit drive: the unknowns. */
export function solveDense(
  { size, driven }: Equations,
  { re, im, rowScale, exchanges, solution }: Dense,
): ComplexColumn {
  solution.re.fill(0);
  solution.im.fill(0);
  for (const row of driven) solution.re[row] = rowScale[row]!;
  solveComplexFactored(size, re, im, exchanges, solution.re, solution.im, 1);
  return solution;
}

/** Solves the transposed equations for what is read, a sum of some unknowns, each times a complex weight: by equation. */
export function solveDenseTransposed(
  readings: readonly { readonly unknowns: Signed; readonly re: number; readonly im: number }[],
  { size, re, im, rowScale, exchanges, adjoint }: Dense,
): ComplexColumn {
  adjoint.re.fill(0);
  adjoint.im.fill(0);
  for (const { unknowns, re: weightRe, im: weightIm } of readings) {
    for (const [unknown, sign] of unknowns) {
      adjoint.re[unknown]! += sign * weightRe;
      adjoint.im[unknown]! += sign * weightIm;
    }
  }
  solveComplexFactoredTransposed(size, re, im, exchanges, adjoint.re, adjoint.im, 1);
  for (let row = 0; row < size; row++) {
    adjoint.re[row]! *= rowScale[row]!;
    adjoint.im[row]! *= rowScale[row]!;
  }
  return adjoint;
}

/** Puts the values of many columns at one frequency. */
export function putColumns(to: readonly ComplexColumn[], from: ComplexColumn, i: number): void {
  to.forEach(({ re, im }, k) => {
    re[i] = from.re[k]!;
    im[i] = from.im[k]!;
  });
}

/** Adds to an entry, and to what it was summed from. */
function add({ re, im, sizeRe, sizeIm }: Dense, place: number, a: number, b: number): void {
  re[place]! += a;
  im[place]! += b;
  sizeRe[place]! += Math.abs(a);
  sizeIm[place]! += Math.abs(b);
}
