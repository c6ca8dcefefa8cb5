import type { Equations } from './equations.js';
import { MOST_COLUMNS, minors } from './minors.js';
import { NOTHING, ONE, plusProduct, type Sum } from './whole-sums.js';

/** A part of a sum that is asked for: an unknown, times a whole number and the value of a symbol (−1: of none). */
export interface Share {
  readonly unknown: number;
  readonly coefficient: number;
  readonly symbol: number;
}

/** Determinant and numerators of a system. Their factors are laws of elements. */
export interface Expansion {
  readonly denominator: Sum;
  readonly numerators: readonly Sum[];
  /** The element of each factor, and the power of s that it brings. */
  readonly elements: readonly number[];
  readonly powers: readonly number[];
}

/** A product is a set of factors, which are bits of a whole number. */
const MOST_FACTORS = 31;

/** An unknown that was eliminated: ± itself plus the sum of `rest` is zero. */
interface Eliminated {
  readonly column: number;
  readonly sign: number;
  readonly rest: readonly Sum[];
}

/**
 * Eliminates by the entries that are ±1, of joints, sources and transformers, those first that make the fewest products. Takes
 * the rows out of `rows`, and leaves nothing in the columns.
 */
function eliminate(rows: Sum[][], drive: number): Eliminated[] {
  const eliminated: Eliminated[] = [];
  for (;;) {
    const heights = new Uint32Array(drive + 1);
    const widths = new Uint32Array(rows.length);
    for (const [r, row] of rows.entries()) {
      for (let c = 0; c <= drive; c++) {
        heights[c]! += row[c]!.length / 2;
        widths[r]! += row[c]!.length / 2;
      }
    }
    let least = Infinity;
    let [at, column, sign] = [-1, -1, 1];
    for (const [r, row] of rows.entries()) {
      for (let c = 0; c < drive; c++) {
        const entry = row[c]!;
        if (entry.length !== 2 || entry[0] !== 0 || Math.abs(entry[1]!) !== 1) continue;
        const made = (widths[r]! - 1) * (heights[c]! - 1);
        if (made < least) [least, at, column, sign] = [made, r, c, entry[1]!];
      }
    }
    if (at < 0) return eliminated;
    const [rest] = rows.splice(at, 1) as [Sum[]];
    rest[column] = NOTHING;
    for (const row of rows) {
      const factor = row[column]!;
      row[column] = NOTHING;
      if (factor.length === 0) continue;
      for (let other = 0; other <= drive; other++) {
        if (rest[other]!.length > 0) row[other] = plusProduct(row[other]!, rest[other]!, factor, -sign);
      }
    }
    eliminated.push({ column, sign, rest });
  }
}

/**
 * Determinant of the equations and, by Cramer's rule, the numerators of sums of unknowns; `undefined` when there are more
 * than `most` products, or too many factors. A law of an element is a matrix of rank one, and a factor of its own: minors are
 * linear in it, so that products with its square cancel in the end, and are left out at once. The elements in `first` are the
 * first factors.
 */
export function expand(
  { size, couplings, driven }: Equations,
  first: readonly number[],
  sums: readonly (readonly Share[])[],
  most: number,
): Expansion | undefined {
  const rows = Array.from({ length: size }, () => new Array<Sum>(size + 1).fill(NOTHING));
  const elements = [...first];
  const powers: number[] = [];
  for (const { rows: into, columns, symbol, power } of couplings) {
    let law = ONE;
    if (symbol >= 0) {
      const known = first.indexOf(symbol);
      const factor = known < 0 ? elements.push(symbol) - 1 : known;
      if (factor >= MOST_FACTORS) return undefined;
      powers[factor] = power;
      law = [1 << factor, 1];
    }
    for (const [row, a] of into) {
      const across = rows[row]!;
      for (const [column, b] of columns) across[column] = plusProduct(across[column]!, law, ONE, a * b);
    }
  }
  for (const row of driven) rows[row]![size] = ONE;

  // With the drive as one unknown more, whose value is the determinant, the solution is what makes all rows nothing.
  const eliminated = eliminate(rows, size);
  const asked = new Set([size, ...sums.flatMap((sum) => sum.map(({ unknown }) => unknown))]);
  for (const { column, rest } of eliminated) {
    if (asked.has(column)) for (const [other, factor] of rest.entries()) if (factor.length > 0) asked.add(other);
  }
  const gone = new Set(eliminated.map(({ column }) => column));
  const columns = Array.from({ length: size + 1 }, (_, column) => column).filter((column) => !gone.has(column));
  if (columns.length > MOST_COLUMNS) return undefined;
  const open = columns.reduce((bits, column, k) => (asked.has(column) ? bits | (1 << k) : bits), 0);
  const found = minors(
    rows.map((row) => columns.map((column) => row[column]!)),
    open,
    most,
  );
  if (found === undefined) return undefined;

  const solution: Sum[] = new Array<Sum>(size + 1).fill(NOTHING);
  // The minors change their sign from column to column.
  for (const [k, sum] of found) solution[columns[k]!] = k % 2 === columns.length % 2 ? negative(sum) : sum;
  for (const { column, sign, rest } of eliminated.reverse()) {
    if (!asked.has(column)) continue;
    solution[column] = rest.reduce((sum, factor, other) => plusProduct(sum, solution[other]!, factor, -sign), NOTHING);
  }
  // The drive stands on the same side as the unknowns. The first law of a piston is that of its flow.
  const factorOf = (symbol: number): Sum => (symbol < 0 ? ONE : [1 << elements.indexOf(symbol), 1]);
  const numerators = sums.map((shares) =>
    shares.reduce(
      (sum, { unknown, coefficient, symbol }) => plusProduct(sum, solution[unknown]!, factorOf(symbol), -coefficient),
      NOTHING,
    ),
  );
  return { denominator: solution[size]!, numerators, elements, powers };
}

const negative = (sum: Sum): Sum => plusProduct(NOTHING, sum, ONE, -1);

/** The place of the lowest bit. */
export const lowestOf = (bits: number): number => 31 - Math.clz32(bits & -bits);
