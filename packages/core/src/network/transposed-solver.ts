import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { assign, type Factor, multiply, subtractProduct } from './column-arithmetic.js';
import { type Dense, putColumns, solveDenseTransposed } from './dense.js';
import type { Signed } from './equations.js';
import type { Factored } from './forward-elimination.js';

/** The transposed equations, solved with the factors of an elimination. */
export interface TransposedSolver {
  /** Solution, by equation: how much of what is put in there arrives where it is read. */
  readonly adjoint: readonly ComplexColumn[];
  readonly solve: (count: number) => void;
  /** Solves one frequency again, by a matrix factored with row exchanges. */
  readonly solveAt: (i: number, one: Dense) => void;
}

/** A sum of some unknowns, times a weight that is asked for each time. */
export interface WeightedReading {
  readonly unknowns: Signed;
  readonly weight: () => Factor;
}

/** Prepares $A^{\mathsf T} \lambda = c$ for a sum of readings. */
export function transposedSolver(
  { steps, columnOf, factorOf, factorBelow, inverseOf }: Factored,
  block: number,
  readings: readonly WeightedReading[],
): TransposedSolver {
  const columnEach = () => steps.map(() => complexColumn(block));
  const [adjoint, reads] = [columnEach(), columnEach()];
  // Down the columns that the reading reaches, then up again.
  const reached = new Set(readings.flatMap(({ unknowns }) => unknowns.map(([unknown]) => unknown)));
  const down = steps.flatMap((step) => {
    if (!reached.has(step.column)) return [];
    for (const entry of step.rest) reached.add(columnOf(entry));
    const rest = step.rest.map((entry) => [factorOf(entry), reads[columnOf(entry)] as ComplexColumn] as const);
    return [{ rest, inverse: inverseOf(step), y: reads[step.column] as ComplexColumn }];
  });
  const up = [...steps].reverse().map((step) => ({
    y: reached.has(step.column) ? (reads[step.column] as ComplexColumn) : 0,
    rows: step.rows.map(({ factor, row }) => [factorBelow(factor), adjoint[row] as ComplexColumn] as const),
    to: adjoint[step.row] as ComplexColumn,
  }));

  const solve = (count: number) => {
    for (const unknown of reached) assign(reads[unknown] as ComplexColumn, 0, count);
    for (const { unknowns, weight } of readings) {
      for (const [unknown, sign] of unknowns) subtractProduct(reads[unknown] as ComplexColumn, weight(), -sign, count);
    }
    for (const { y, inverse, rest } of down) {
      if (inverse !== 1) multiply(y, y, inverse, count);
      for (const [factor, other] of rest) subtractProduct(other, factor, y, count);
    }
    for (const { to, y, rows } of up) {
      assign(to, y, count);
      for (const [factor, other] of rows) subtractProduct(to, factor, other, count);
    }
  };
  const solveAt = (i: number, one: Dense) => {
    const parts = readings.map(({ unknowns, weight }) => {
      const factor = weight();
      const [re, im] = typeof factor === 'number' ? [factor, 0] : [factor.re[i]!, factor.im[i]!];
      return { unknowns, re, im };
    });
    putColumns(adjoint, solveDenseTransposed(parts, one), i);
  };
  return { adjoint, solve, solveAt };
}
