import { addProduct, type Sum } from './whole-sums.js';

/** Entries by column. */
export type Row = ReadonlyMap<number, Sum>;

/** Sets of columns are bits of one whole number, which the engine keeps in a register. */
export const MOST_COLUMNS = 30;

/**
 * Minors of a sparse matrix of sums with one column more than rows: for each column in the set `open` the determinant of
 * what is left without it. One pass, row by row over sets of used columns, serves them all. For a network of resistances, masses and
 * springs what is left of the products are its spanning trees, all of one sign, so that no digit is lost when numbers are put
 * in. Gives up, with `undefined`, past `most` products.
 */
export function minors(rows: readonly Row[], open: number, most: number): Map<number, Sum> | undefined {
  const all = 2 ** (rows.length + 1) - 1;
  const order = ordered(rows);
  /** Columns that no later row has: of these one at most may be left out, and only if it was asked for. */
  const finished = order.map((_, r) => all & ~order.slice(r + 1).reduce((bits, row) => bits | columnsOf(row), 0));
  let states = new Map<number, Sum>([[0, new Map([[0, 1]])]]);
  for (const [r, row] of order.entries()) {
    const next = new Map<number, Sum>();
    const done = finished[r]!;
    let products = 0;
    for (const [used, sum] of states) {
      for (const [column, entry] of row) {
        if ((used >> column) & 1) continue;
        const now = used | (1 << column);
        const left = done & ~now;
        if ((left & (left - 1)) !== 0 || (left & ~open) !== 0) continue;
        let target = next.get(now);
        if (target === undefined) {
          target = new Map();
          next.set(now, target);
        }
        products -= target.size;
        addProduct(target, sum, entry, isOdd(used >> (column + 1)) ? -1 : 1);
        products += target.size;
        if (products > most) return undefined;
      }
    }
    states = next;
  }
  return new Map(Array.from(states, ([used, sum]) => [31 - Math.clz32(all & ~used), sum]));
}

/** Whether a set has an odd number of columns. Each column used to the right of the next one turns the sign. */
function isOdd(bits: number): boolean {
  let odd = false;
  for (let left = bits; left !== 0; left &= left - 1) odd = !odd;
  return odd;
}

const columnsOf = (row: Row): number => {
  let bits = 0;
  for (const column of row.keys()) bits |= 1 << column;
  return bits;
};

/** Rows in an order in which few columns are open at a time: begun by an earlier row, and not yet finished. */
function ordered(rows: readonly Row[]): Row[] {
  const left = [...rows];
  const order: Row[] = [];
  let begun = 0;
  while (left.length > 0) {
    let best = 0;
    let least = Infinity;
    left.forEach((row, r) => {
      let opened = 0;
      for (const column of row.keys()) {
        if (!((begun >> column) & 1)) opened++;
        if (!left.some((other) => other !== row && other.has(column))) opened--;
      }
      if (opened < least) [best, least] = [r, opened];
    });
    const [next] = left.splice(best, 1) as [Row];
    order.push(next);
    begun |= columnsOf(next);
  }
  return order;
}
