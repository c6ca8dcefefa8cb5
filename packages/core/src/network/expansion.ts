import type { Equations } from './equations.js';
import { MOST_COLUMNS, minors } from './minors.js';
import { addProduct, type Sum } from './whole-sums.js';

/** One product of a sum: coefficient × s^power × values of `symbols`, which may repeat. */
export interface Term {
  readonly coefficient: number;
  readonly power: number;
  readonly symbols: readonly number[];
}

/** A part of a sum that is asked for: an unknown, times a whole number and the value of a symbol (−1: of none). */
export interface Share {
  readonly unknown: number;
  readonly coefficient: number;
  readonly symbol: number;
}

/** Where the exponent of a symbol stands in a monomial, and which power of s the symbol brings. */
interface Place {
  readonly symbol: number;
  readonly value: number;
  readonly power: number;
}

/**
 * Place value of each symbol in a monomial. A law of an element is a matrix of rank one. No minor has its number more often than
 * the element has laws, and nor has an entry after an elimination by ±1, which is a minor too. Only two of these are ever multiplied.
 */
function placesOf({ couplings }: Equations): { readonly places: readonly Place[]; readonly fits: boolean } {
  const laws = new Map<number, { count: number; power: number }>();
  for (const { symbol, power } of couplings) {
    if (symbol >= 0) laws.set(symbol, { count: (laws.get(symbol)?.count ?? 0) + 1, power });
  }
  let value = 1;
  const places = [...laws].reverse().map(([symbol, { count, power }]) => {
    const place = { symbol, value, power };
    value *= 2 * count + 1;
    return place;
  });
  return { places, fits: value <= Number.MAX_SAFE_INTEGER };
}

/** An unknown that was eliminated: ± itself and the sum of `rest` are nothing. */
interface Eliminated {
  readonly column: number;
  readonly sign: number;
  readonly rest: ReadonlyMap<number, Sum>;
}

/**
 * Eliminates by the entries that are ±1, of joints, sources and transformers, those first that make the fewest products. Takes
 * the rows and columns out of `rows`.
 */
function eliminate(rows: Map<number, Sum>[], drive: number): Eliminated[] {
  const eliminated: Eliminated[] = [];
  for (;;) {
    const heights = new Uint32Array(drive + 1);
    const widths = rows.map((row) => {
      let width = 0;
      for (const [column, { size }] of row) {
        heights[column]! += size;
        width += size;
      }
      return width;
    });
    let least = Infinity;
    let [at, column, sign] = [-1, -1, 1];
    rows.forEach((row, r) => {
      for (const [c, entry] of row) {
        const one = entry.size === 1 ? entry.get(0) : undefined;
        const made = (widths[r]! - 1) * (heights[c]! - 1);
        if (c !== drive && made < least && (one === 1 || one === -1)) [least, at, column, sign] = [made, r, c, one];
      }
    });
    if (at < 0) return eliminated;
    const [rest] = rows.splice(at, 1) as [Map<number, Sum>];
    rest.delete(column);
    for (const row of rows) {
      const factor = row.get(column);
      if (factor === undefined) continue;
      row.delete(column);
      for (const [other, source] of rest) {
        const target: Sum = row.get(other) ?? new Map();
        addProduct(target, factor, source, -sign);
        if (target.size === 0) row.delete(other);
        else row.set(other, target);
      }
    }
    eliminated.push({ column, sign, rest });
  }
}

/**
 * Determinant of the equations and, by Cramer's rule, the numerators of sums of unknowns; `undefined` when there are more
 * than `most` products, or more symbols than one number can tell apart (some thirty).
 */
export function expand(
  system: Equations,
  sums: readonly (readonly Share[])[],
  most: number,
): { readonly denominator: readonly Term[]; readonly numerators: readonly (readonly Term[])[] } | undefined {
  const { size, stamps, driven } = system;
  const { places, fits } = placesOf(system);
  if (!fits) return undefined;
  const placeOf = new Map(places.map(({ symbol, value }) => [symbol, value]));
  const rows = Array.from({ length: size }, () => new Map<number, Sum>());
  const put = (row: number, column: number, key: number, sign: number) => {
    const across = rows[row] as Map<number, Sum>;
    const entry = across.get(column);
    if (entry === undefined) across.set(column, new Map([[key, sign]]));
    else entry.set(key, (entry.get(key) ?? 0) + sign);
  };
  for (const { row, column, sign, symbol } of stamps) put(row, column, placeOf.get(symbol) ?? 0, sign);
  for (const row of driven) put(row, size, 0, 1);

  // With the drive as one unknown more, whose value is the determinant, the solution is what makes all rows nothing.
  const eliminated = eliminate(rows, size);
  const asked = new Set([size, ...sums.flatMap((sum) => sum.map(({ unknown }) => unknown))]);
  for (const { column, rest } of eliminated) if (asked.has(column)) for (const other of rest.keys()) asked.add(other);
  const gone = new Set(eliminated.map(({ column }) => column));
  const columns = Array.from({ length: size + 1 }, (_, column) => column).filter((column) => !gone.has(column));
  if (columns.length > MOST_COLUMNS) return undefined;
  const place = new Map(columns.map((column, k) => [column, k]));
  const compact = rows.map((row) => new Map(Array.from(row, ([column, sum]) => [place.get(column) as number, sum])));
  const open = columns.reduce((bits, column, k) => (asked.has(column) ? bits | (1 << k) : bits), 0);
  const found = minors(compact, open, most);
  if (found === undefined) return undefined;

  const solution = new Map<number, Sum>();
  // The minors change their sign from column to column.
  for (const [k, sum] of found) {
    if (k % 2 === columns.length % 2) for (const [key, coefficient] of sum) sum.set(key, -coefficient);
    solution.set(columns[k]!, sum);
  }
  for (const { column, sign, rest } of eliminated.reverse()) {
    if (!asked.has(column)) continue;
    const sum: Sum = new Map();
    for (const [other, factor] of rest) addProduct(sum, solution.get(other) ?? new Map(), factor, -sign);
    solution.set(column, sum);
  }

  const numerators = sums.map((shares) => {
    const total: Sum = new Map();
    for (const { unknown, coefficient, symbol } of shares) {
      // The drive stands on the same side as the unknowns.
      const factor: Sum = new Map([[placeOf.get(symbol) ?? 0, -coefficient]]);
      addProduct(total, solution.get(unknown) ?? new Map(), factor, 1);
    }
    return termsOf(total, places);
  });
  return { denominator: termsOf(solution.get(size) ?? new Map(), places), numerators };
}

/** The products of a sum with their symbols, read off from the highest place to the lowest. */
function termsOf(sum: Sum, places: readonly Place[]): Term[] {
  const terms: Term[] = [];
  for (const [key, coefficient] of sum) {
    const symbols: number[] = [];
    let power = 0;
    let left = key;
    for (let k = places.length - 1; left > 0; k--) {
      const { symbol, value, power: own } = places[k] as Place;
      // No division: a remainder of numbers of this size takes the engine longer than all the rest.
      for (; left >= value; left -= value) {
        symbols.push(symbol);
        power += own;
      }
    }
    terms.push({ coefficient, power, symbols });
  }
  return terms;
}
