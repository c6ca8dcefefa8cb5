import type { Equations } from './equations.js';

/**
 * A sum of element products: monomial → whole coefficient. A monomial packs the exponents of its symbols as the digits of
 * one number, so that multiplying is adding. The power of s follows from the symbols.
 */
type Sum = Map<number, number>;

/** One product of a sum: coefficient × s^power × values of `symbols`, which may repeat. */
export interface Term {
  readonly coefficient: number;
  readonly power: number;
  readonly symbols: readonly number[];
}

interface Entry {
  readonly column: number;
  readonly sign: number;
  readonly monomial: number;
}

/** Columns used are bits of one number, which holds 53 of them. */
const MOST_UNKNOWNS = 50;
const BITS = Float64Array.from({ length: MOST_UNKNOWNS + 1 }, (_, column) => 2 ** column);
const has = (used: number, column: number): boolean => (used / BITS[column]!) % 2 >= 1;

/** Whether one of the columns in `used` stands right of `column`: an odd number of them turns the sign. */
function oddRightOf(used: number, column: number): boolean {
  let odd = false;
  for (let right = column + 1; BITS[right]! <= used; right++) odd = odd !== has(used, right);
  return odd;
}

/**
 * Minors of a sparse matrix of symbols with one column more than rows: for each column in `open` the determinant of what is
 * left without it. One pass, row by row over sets of used columns, serves them all. Products that cancel do so exactly, as
 * whole numbers: for a network of resistances, masses and springs what is left are its spanning trees, all of one sign, so
 * that no digit is lost when numbers are put in. Gives up, with `undefined`, past `most` products.
 */
function minors(
  rows: readonly (readonly Entry[])[],
  open: ReadonlySet<number>,
  most: number,
): Map<number, Sum> | undefined {
  const columns = rows.length + 1;
  const lastRow = Array.from({ length: columns }, () => -1);
  rows.forEach((row, r) => {
    for (const { column } of row) lastRow[column] = r;
  });
  /** A column that no later row can use must be the one left out, and one that was asked for. */
  const hopeless = (used: number, row: number): boolean => {
    let left = 0;
    for (let column = 0; column < columns; column++) {
      if (lastRow[column]! > row || has(used, column)) continue;
      if (left++ > 0 || !open.has(column)) return true;
    }
    return false;
  };
  let states = new Map<number, Sum>([[0, new Map([[0, 1]])]]);
  for (const [r, row] of rows.entries()) {
    const next = new Map<number, Sum>();
    let products = 0;
    for (const [used, sum] of states) {
      for (const { column, sign, monomial: factor } of row) {
        if (has(used, column)) continue;
        const now = used + BITS[column]!;
        let target = next.get(now);
        if (target === undefined) {
          if (hopeless(now, r)) continue;
          target = new Map();
          next.set(now, target);
        }
        const signed = oddRightOf(used, column) ? -sign : sign;
        products -= target.size;
        for (const [key, coefficient] of sum) {
          const product = key + factor;
          const total = (target.get(product) ?? 0) + coefficient * signed;
          if (total === 0) target.delete(product);
          else target.set(product, total);
        }
        products += target.size;
        if (products > most) return undefined;
      }
    }
    states = next;
  }
  const all = 2 ** columns - 1;
  return new Map([...states].map(([used, sum]) => [Math.round(Math.log2(all - used)), sum]));
}

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

/** Rows in an order in which few columns are open at a time: begun by an earlier row, and not yet finished. */
function ordered(rows: readonly (readonly Entry[])[]): (readonly Entry[])[] {
  const left = new Set(rows);
  const uses = new Map<number, number>();
  for (const row of rows) for (const column of columnsOf(row)) uses.set(column, (uses.get(column) ?? 0) + 1);
  const begun = new Set<number>();
  const order: (readonly Entry[])[] = [];
  while (left.size > 0) {
    let best: readonly Entry[] | undefined;
    let least = Infinity;
    for (const row of left) {
      let opened = 0;
      for (const column of columnsOf(row)) {
        if (!begun.has(column)) opened++;
        if (uses.get(column) === 1) opened--;
      }
      if (opened < least) [best, least] = [row, opened];
    }
    const next = best as readonly Entry[];
    left.delete(next);
    order.push(next);
    for (const column of columnsOf(next)) {
      begun.add(column);
      uses.set(column, (uses.get(column) as number) - 1);
    }
  }
  return order;
}

const columnsOf = (row: readonly Entry[]): ReadonlySet<number> => new Set(row.map(({ column }) => column));

/** Place value of each symbol: it occurs in so many rows at most. */
function placesOf(stamps: Equations['stamps']) {
  const powerOf = new Map(stamps.map(({ symbol, power }) => [symbol, power]));
  const rowsOf = new Map<number, Set<number>>();
  for (const { symbol, row } of stamps) {
    if (symbol >= 0) rowsOf.set(symbol, (rowsOf.get(symbol) ?? new Set()).add(row));
  }
  let value = 1;
  const places = [...rowsOf].map(([symbol, rows]) => {
    // One more for what a probe multiplies by, and one for its square, which cancels.
    const place = { symbol, value, radix: rows.size + 2, powerOfS: powerOf.get(symbol) as number };
    value *= place.radix;
    return place;
  });
  return { places, fits: value <= Number.MAX_SAFE_INTEGER };
}

/** A part of a sum that is asked for: an unknown, times a whole number and the value of a symbol (−1: of none). */
export interface Share {
  readonly unknown: number;
  readonly coefficient: number;
  readonly symbol: number;
}

/**
 * Determinant of the equations and, by Cramer's rule, the numerators of sums of unknowns; `undefined` when there are more
 * than `most` products, or more symbols than one number can tell apart (some thirty).
 */
export function expand(
  { size, stamps, driven }: Equations,
  sums: readonly (readonly Share[])[],
  most: number,
): { readonly denominator: readonly Term[]; readonly numerators: readonly (readonly Term[])[] } | undefined {
  const { places, fits } = placesOf(stamps);
  if (!fits || size > MOST_UNKNOWNS) return undefined;
  const placeOf = new Map(places.map(({ symbol, value }) => [symbol, value]));
  const rows = Array.from({ length: size }, (): Entry[] => []);
  for (const { row, column, sign, symbol } of stamps) {
    (rows[row] as Entry[]).push({ column, sign, monomial: placeOf.get(symbol) ?? 0 });
  }
  for (const row of driven) (rows[row] as Entry[]).push({ column: size, sign: 1, monomial: 0 });
  const unknowns = sums.flatMap((sum) => sum.map(({ unknown }) => unknown));
  // All minors change their sign together when rows are exchanged: their quotients do not.
  const found = minors(ordered(rows), new Set([...unknowns, size]), most);
  if (found === undefined) return undefined;

  const termsOf = (sum: Sum): Term[] =>
    Array.from(sum, ([key, coefficient]) => {
      const symbols: number[] = [];
      let power = 0;
      for (const { symbol, value, radix, powerOfS } of places) {
        for (let times = Math.floor(key / value) % radix; times > 0; times--) {
          symbols.push(symbol);
          power += powerOfS;
        }
      }
      return { coefficient, power, symbols };
    });
  const numerators = sums.map((shares) => {
    const total: Sum = new Map();
    for (const { unknown, coefficient, symbol } of shares) {
      // The drive stands in the last column; moved into the place of an unknown it passes the columns between.
      const signed = (size - 1 - unknown) % 2 === 0 ? coefficient : -coefficient;
      const factor = placeOf.get(symbol) ?? 0;
      for (const [key, own] of found.get(unknown) ?? []) {
        const sum = (total.get(key + factor) ?? 0) + signed * own;
        if (sum === 0) total.delete(key + factor);
        else total.set(key + factor, sum);
      }
    }
    return termsOf(total);
  });
  return { denominator: termsOf(found.get(size) ?? new Map()), numerators };
}
