import type { ComplexColumn } from '../numeric/index.js';
import { assign, multiply, subtractProduct } from './column-arithmetic.js';
import { columnRoom, type TakeColumn } from './column-room.js';
import { constantSums } from './constant-sums.js';
import { dense, factorDense, putColumns, solveDense } from './dense.js';
import { elimination } from './elimination.js';
import { entryColumns } from './entry-columns.js';
import { type Factored, forwardElimination } from './forward-elimination.js';
import { fillListed, type ListedColumns, listedColumns } from './listed-columns.js';
import type { NumberedEquations } from './numbered-equations.js';
import { contradiction } from './refusals.js';
import type { Pivot } from './step.js';
import type { TransposedSolver } from './transposed-solver.js';

/** Frequencies solved at once: their matrices stay in the cache, and each operation is a loop over them. */
export const BLOCK = 128;
/** Below this relative pivot a dense solution has no valid digit left: nothing damps the network there. */
const SINGULAR = 1e-14;

/** The equations of a network, solved for a block of frequencies at once. */
export interface BlockSolver {
  /** Columns of the elements given over frequency, by element, at the loaded frequencies. */
  readonly listed: readonly (ListedColumns | undefined)[];
  /** The solution, by unknown; filled for the unknowns that are wanted. */
  readonly solution: readonly ComplexColumn[];
  /** For solving the transposed equations as well. */
  readonly factored: Factored;
  /** Takes the numbers of the network again after they changed. False where another order of elimination is due. */
  readonly renumber: () => boolean;
  /** Loads at most one block of frequencies. */
  readonly load: (frequencies: Float64Array) => void;
  /** Solves the equations, and the transposed ones if they are passed in. Returns the first place without a solution, or −1. */
  readonly solve: (transposed?: TransposedSolver) => number;
}

/**
 * Prepares the elimination of a network's equations, for the unknowns that are wanted, in an order found before. Where a pivot that is a sum nearly
 * vanishes (the node of a lossless box at its tuning), that frequency alone is solved again with row exchanges.
 */
export function blockSolver(
  { topology, slots, system, values, numbers }: NumberedEquations,
  wanted: Iterable<number>,
  planned: readonly Pivot[] = [],
  take: TakeColumn = columnRoom(BLOCK).take,
): BlockSolver {
  const { elements } = topology;
  const order = elimination(system, numbers, planned);
  if (order === undefined) throw contradiction(topology);
  const listed = elements.map((element) => listedColumns(element, take));
  const columns = entryColumns(order.entries, BLOCK, take);
  const factored = forwardElimination(order, columns, take);
  const { steps, columnOf, factorOf, inverseOf, eliminate } = factored;

  // Back substitution, of what is wanted and what that needs.
  const solution = steps.map(take);
  const columnFor = (unknown: number) => solution[unknown] as ComplexColumn;
  const sums = constantSums(factored);
  const needed = new Set(wanted);
  const backward = steps.flatMap((step) => {
    if (!needed.has(step.column)) return [];
    const sum = sums.get(step.column);
    const rest = sum
      ? [...sum.terms].map(([unknown, factor]) => [-factor, unknown] as const)
      : step.rest.map((entry) => [factorOf(entry), columnOf(entry)] as const);
    for (const [, unknown] of rest) needed.add(unknown);
    const right = sum ? sum.constant : step.right < 0 ? 0 : factorOf(step.right);
    const terms = rest.map(([factor, unknown]) => [factor, columnFor(unknown)] as const);
    return [{ right, terms, inverse: sum ? 1 : inverseOf(step), x: columnFor(step.column) }];
  });
  backward.reverse();
  const substitute = () => {
    for (const { x, right, terms, inverse } of backward) {
      const [[factor, other] = [0, x]] = terms;
      if (terms.length === 1 && typeof factor === 'number' && right === 0 && inverse === 1) {
        multiply(x, -factor, other, count);
        continue;
      }
      assign(x, right, count);
      for (const [factor, other] of terms) subtractProduct(x, factor, other, count);
      if (inverse !== 1) multiply(x, x, inverse, count);
    }
  };

  const frequencies = new Float64Array(BLOCK);
  let count = 0;
  const load = (block: Float64Array) => {
    frequencies.set(block);
    count = block.length;
    elements.forEach((element, symbol) => {
      const tables = listed[symbol];
      if (tables !== undefined && numbers[symbol] !== 0) fillListed(element, values, slots, block, tables);
    });
    columns.fill(block, listed);
  };

  let one: ReturnType<typeof dense> | undefined;
  const lost = new Uint8Array(BLOCK);
  const solve = (transposed?: TransposedSolver): number => {
    lost.fill(0);
    eliminate(count, lost);
    substitute();
    transposed?.solve(count);
    for (let i = lost.indexOf(1); i >= 0 && i < count; i = lost.indexOf(1, i + 1)) {
      one ??= dense(system.size);
      if (factorDense(system, numbers, listed, i, frequencies[i]!, one) < SINGULAR) return i;
      putColumns(solution, solveDense(system, one), i);
      transposed?.solveAt(i, one);
    }
    return -1;
  };
  return { listed, solution, factored, renumber: () => order.renumber(numbers), load, solve };
}
