import { NOTHING, ONE, plusProduct, type Sum } from './whole-sums.js';

/** Entries by column. */
export type Row = readonly Sum[];

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
  let states = new Map<number, Sum>([[0, ONE]]);
  for (const [r, row] of order.entries()) {
    const next = new Map<number, Sum>();
    const done = finished[r]!;
    let length = 0;
    for (const [used, sum] of states) {
      for (let column = 0; column < row.length; column++) {
        const entry = row[column]!;
        if (entry.length === 0 || (used >> column) & 1) continue;
        const now = used | (1 << column);
        const left = done & ~now;
        if ((left & (left - 1)) !== 0 || (left & ~open) !== 0) continue;
        // Each column used to the right of the next one turns the sign.
        const turned = countOf(used >> (column + 1)) % 2 === 1 ? -1 : 1;
        const before = next.get(now) ?? NOTHING;
        const after = plusProduct(before, sum, entry, turned);
        next.set(now, after);
        length += after.length - before.length;
        if (length > 2 * most) return undefined;
      }
    }
    states = next;
  }
  return new Map(Array.from(states, ([used, sum]) => [31 - Math.clz32(all & ~used), sum]));
}

/** How many columns a set has. */
function countOf(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count++;
  return count;
}

const columnsOf = (row: Row): number => {
  let bits = 0;
  for (let column = 0; column < row.length; column++) if (row[column]!.length > 0) bits |= 1 << column;
  return bits;
};

/** Rows in an order in which few columns are open at a time: begun by an earlier row, and not yet finished. */
function ordered(rows: readonly Row[]): Row[] {
  const left = rows.map((row) => ({ row, columns: columnsOf(row) }));
  const order: Row[] = [];
  let begun = 0;
  while (left.length > 0) {
    let best = 0;
    let least = Infinity;
    left.forEach(({ columns }, r) => {
      const others = left.reduce((bits, other, k) => (k === r ? bits : bits | other.columns), 0);
      const opened = countOf(columns & ~begun) - countOf(columns & ~others);
      if (opened < least) [best, least] = [r, opened];
    });
    const [next] = left.splice(best, 1) as [(typeof left)[number]];
    order.push(next.row);
    begun |= next.columns;
  }
  return order;
}
