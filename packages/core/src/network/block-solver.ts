import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { addSizes, assign, type Factor, invert, multiply, subtractProduct } from './column-arithmetic.js';
import { dense, factorDense, solveDense, solveDenseTransposed } from './dense.js';
import type { Network } from './element.js';
import { elimination, type Step } from './elimination.js';
import { type Entry, LOST } from './entry.js';
import { entryColumns } from './entry-columns.js';
import { type Equations, type Signed, stampedValues } from './equations.js';
import { fillListed, type ListedColumns, listedColumns } from './listed-columns.js';
import { contradiction } from './refusals.js';

/** Frequencies solved at once: their matrices stay in the cache, and each operation is a loop over them. */
export const BLOCK = 64;
/** Below this relative pivot a dense solution has no digit left: nothing damps the network there. */
const SINGULAR = 1e-14;
/** The square of a pivot beyond these sizes leaves double precision. */
const [SMALLEST, LARGEST] = [1e-150, 1e150];

/** The equations of a network, solved for a block of frequencies at once. */
export interface BlockSolver {
  /** What each element stands with in the equations. */
  readonly values: Float64Array;
  /** Columns of the elements given over frequency, by element, at the frequencies loaded. */
  readonly listed: readonly (ListedColumns | undefined)[];
  /** Solution, by unknown; filled where it is wanted. */
  readonly solution: readonly ComplexColumn[];
  /** Solution of the transposed equations, by equation: how much of what is put in there arrives where it is read. */
  readonly adjoint: readonly ComplexColumn[];
  /** Takes at most a block of frequencies. */
  readonly load: (frequencies: Float64Array) => void;
  /** Solves; `weight` is that of the reading. Returns the first place of the block that has no solution, or −1. */
  readonly solve: (weight: Factor) => number;
}

/**
 * Prepares the elimination of a network's equations, for the unknowns that are wanted and, where `reading` is given, for the
 * transposed equations of what it reads. Where a pivot that is a sum nearly vanishes (the node of a lossless box at its
 * tuning), that frequency alone is solved again with row exchanges. Both solutions come from the same factors.
 */
export function blockSolver(
  network: Network,
  system: Equations,
  wanted: Iterable<number>,
  reading?: Signed,
): BlockSolver {
  const { elements } = network;
  const { size } = system;
  const values = stampedValues(network, system);
  const order = elimination(system, values);
  if (order === undefined) throw contradiction(network);
  const { entries, steps } = order;
  const { factorOf, sizesOf, fill } = entryColumns(entries, BLOCK);
  const listed = elements.map((element) => listedColumns(element, BLOCK));
  const columnEach = () => Array.from({ length: size }, () => complexColumn(BLOCK));
  const columnOf = (index: number) => (entries[index] as Entry).column;
  const inverseOf = ({ pivot }: Step): Factor => {
    const factor = factorOf(pivot);
    return typeof factor === 'number' ? 1 / factor : factor;
  };

  // Elimination: each entry below a pivot becomes its factor, each pivot its inverse.
  const guarded = new Set(steps.flatMap((step) => (step.swept && step.guarded ? [step.pivot] : [])));
  const factors = new Map<number, Factor>();
  const forward = steps.flatMap((step) => {
    if (!step.swept) return [];
    const inverse = inverseOf(step);
    const rows = step.rows.map(({ factor, updates }) => {
      const from = factorOf(factor);
      const number = typeof from === 'number';
      const to = !number ? from : typeof inverse === 'number' ? from * inverse : complexColumn(BLOCK);
      factors.set(factor, to);
      const changes = updates.map(([target, source]) => ({
        target: factorOf(target) as ComplexColumn,
        source: factorOf(source),
        sizes: guarded.has(target) ? sizesOf(target) : undefined,
      }));
      return { from, to, changes };
    });
    return [{ inverse, sizes: step.guarded ? sizesOf(step.pivot) : undefined, rows }];
  });

  // Back substitution, of what is wanted and what that needs.
  const solution = columnEach();
  const needed = new Set(wanted);
  const backward = steps.flatMap((step) => {
    if (!needed.has(step.column)) return [];
    for (const entry of step.rest) needed.add(columnOf(entry));
    const rest = step.rest.map((entry) => [factorOf(entry), solution[columnOf(entry)] as ComplexColumn] as const);
    const right = step.right < 0 ? 0 : factorOf(step.right);
    return [{ right, rest, inverse: inverseOf(step), x: solution[step.column] as ComplexColumn }];
  });
  backward.reverse();

  // The transposed equations: down the columns that the reading reaches, then up again.
  const adjoint = reading === undefined ? [] : columnEach();
  const reads = reading === undefined ? [] : columnEach();
  const reached = new Set(reading?.map(([unknown]) => unknown));
  const across = steps.flatMap((step) => {
    if (!reached.has(step.column)) return [];
    for (const entry of step.rest) reached.add(columnOf(entry));
    const rest = step.rest.map((entry) => [factorOf(entry), reads[columnOf(entry)] as ComplexColumn] as const);
    return [{ rest, inverse: inverseOf(step), y: reads[step.column] as ComplexColumn }];
  });
  const up = [...(reading === undefined ? [] : steps)].reverse().map((step) => ({
    y: reached.has(step.column) ? (reads[step.column] as ComplexColumn) : 0,
    rows: step.rows.map(
      ({ factor, row }) => [factors.get(factor) ?? factorOf(factor), adjoint[row] as ComplexColumn] as const,
    ),
    to: adjoint[step.row] as ComplexColumn,
  }));

  const frequencies = new Float64Array(BLOCK);
  let count = 0;
  const load = (block: Float64Array) => {
    frequencies.set(block);
    count = block.length;
    elements.forEach((element, symbol) => {
      const columns = listed[symbol];
      if (columns !== undefined) fillListed(element, block, columns);
    });
    fill(block, listed);
  };

  const lost = new Uint8Array(BLOCK);
  /** Marks the frequencies at which a pivot lost too many digits; they go on with a 1 and are solved again. */
  const guard = ({ re, im }: ComplexColumn, sizes: Float64Array | undefined) => {
    for (let i = 0; i < count; i++) {
      const left = Math.abs(re[i] as number) + Math.abs(im[i] as number);
      const floor = sizes === undefined ? 0 : LOST * (sizes[i] as number);
      if (left > floor && left > SMALLEST && left < LARGEST) continue;
      lost[i] = 1;
      re[i] = 1;
      im[i] = 0;
    }
  };
  const eliminate = () => {
    for (const { inverse, sizes, rows } of forward) {
      if (typeof inverse !== 'number') {
        guard(inverse, sizes);
        invert(inverse, count);
      }
      for (const { from, to, changes } of rows) {
        if (typeof to !== 'number') multiply(to, from, inverse, count);
        for (const { target, source, sizes } of changes) {
          if (sizes !== undefined) addSizes(sizes, to, source, count);
          subtractProduct(target, to, source, count);
        }
      }
    }
  };
  const substitute = () => {
    for (const { x, right, rest, inverse } of backward) {
      assign(x, right, count);
      for (const [factor, other] of rest) subtractProduct(x, factor, other, count);
      if (inverse !== 1) multiply(x, x, inverse, count);
    }
  };
  const transposed = (weight: Factor) => {
    for (const unknown of reached) assign(reads[unknown] as ComplexColumn, 0, count);
    for (const [unknown, sign] of reading ?? []) multiply(reads[unknown] as ComplexColumn, weight, sign, count);
    for (const { y, inverse, rest } of across) {
      if (inverse !== 1) multiply(y, y, inverse, count);
      for (const [factor, other] of rest) subtractProduct(other, factor, y, count);
    }
    for (const { to, y, rows } of up) {
      assign(to, y, count);
      for (const [factor, other] of rows) subtractProduct(to, factor, other, count);
    }
  };

  const one = dense(size);
  /** Solves one frequency again, with row exchanges. */
  const again = (weight: Factor, i: number): boolean => {
    if (factorDense(system, values, listed, i, frequencies[i] as number, one) < SINGULAR) return false;
    solveDense(system, one);
    put(solution, one.solution, i);
    if (reading === undefined) return true;
    const [re, im] = typeof weight === 'number' ? [weight, 0] : [weight.re[i] as number, weight.im[i] as number];
    solveDenseTransposed(reading, re, im, one);
    put(adjoint, one.adjoint, i);
    return true;
  };

  const solve = (weight: Factor): number => {
    lost.fill(0);
    eliminate();
    substitute();
    if (reading !== undefined) transposed(weight);
    for (let i = 0; i < count; i++) if (lost[i] === 1 && !again(weight, i)) return i;
    return -1;
  };
  return { values, listed, solution, adjoint, load, solve };
}

/** Puts the values of many columns at one frequency. */
function put(to: readonly ComplexColumn[], from: ComplexColumn, i: number): void {
  to.forEach(({ re, im }, k) => {
    re[i] = from.re[k] as number;
    im[i] = from.im[k] as number;
  });
}
