import type { Equations } from './equations.js';

/**
 * A sum of element products: monomial → whole coefficient. A monomial packs the power of s, each stamp's counted from
 * −1 up, in its low 8 bits and each symbol's exponent in 4 bits above, so that multiplying is adding.
 */
type Sum = Map<bigint, number>;

/** One product of a sum: coefficient × s^power × values of `symbols`, which may repeat. */
export interface Term {
  readonly coefficient: number;
  readonly power: number;
  readonly symbols: readonly number[];
}

interface Entry {
  readonly column: number;
  readonly sign: number;
  readonly monomial: bigint;
}

/** Columns used are bits of one number, which holds 53 of them. */
const MOST_UNKNOWNS = 50;

const monomial = (symbol: number, power: number): bigint =>
  BigInt(power + 1) + (symbol < 0 ? 0n : 1n << BigInt(8 + 4 * symbol));

/**
 * Determinant of a sparse matrix of symbols, row by row over sets of used columns. Products that cancel do so exactly,
 * as whole numbers: for a network of resistances, masses and springs what is left are its spanning trees, all of one
 * sign, so that no digit is lost when numbers are put in. Gives up, with `undefined`, past `most` products.
 */
function determinant(rows: readonly (readonly Entry[])[], most: number): Sum | undefined {
  let states = new Map<number, Sum>([[0, new Map([[0n, 1]])]]);
  for (const row of rows) {
    const next = new Map<number, Sum>();
    let products = 0;
    for (const [used, sum] of states) {
      for (const { column, sign, monomial: factor } of row) {
        const bit = 2 ** column;
        if (Math.floor(used / bit) % 2 === 1) continue;
        let behind = 0; // used columns right of this one: transpositions
        for (let rest = Math.floor(used / bit / 2); rest > 0; rest = Math.floor(rest / 2)) behind += rest % 2;
        const signed = behind % 2 === 0 ? sign : -sign;
        let target = next.get(used + bit);
        if (target === undefined) next.set(used + bit, (target = new Map()));
        for (const [key, coefficient] of sum) {
          const product = key + factor;
          const total = (target.get(product) ?? 0) + coefficient * signed;
          if (total === 0) target.delete(product);
          else target.set(product, total);
        }
      }
    }
    for (const sum of next.values()) products += sum.size;
    if (products > most) return undefined;
    states = next;
  }
  return states.values().next().value ?? new Map();
}

/** Unpacks a sum; `rows` stamps were multiplied, each counted from −1 up. */
function terms(sum: Sum, rows: number): Term[] {
  return [...sum].map(([key, coefficient]) => {
    const symbols: number[] = [];
    for (let symbol = 0, rest = key >> 8n; rest > 0n; symbol++, rest >>= 4n) {
      for (let n = Number(rest & 15n); n > 0; n--) symbols.push(symbol);
    }
    return { coefficient, power: Number(key & 255n) - rows, symbols };
  });
}

/** Determinant of the equations and, by Cramer's rule, the numerator of each unknown asked for; `undefined` past `most`. */
export function expand(equations: Equations, unknowns: readonly number[], most: number) {
  const { size, stamps, driven } = equations;
  if (size > MOST_UNKNOWNS) return undefined;
  const rows = (replaced: number): Entry[][] =>
    Array.from({ length: size }, (_, row) => [
      ...stamps
        .filter((stamp) => stamp.row === row && stamp.column !== replaced)
        .map(({ column, sign, symbol, power }) => ({ column, sign, monomial: monomial(symbol, power) })),
      ...(replaced >= 0 && driven.includes(row) ? [{ column: replaced, sign: 1, monomial: monomial(-1, 0) }] : []),
    ]);
  const denominator = determinant(rows(-1), most);
  if (denominator === undefined) return undefined;
  const numerators = new Map<number, readonly Term[]>();
  for (const unknown of unknowns) {
    const sum = determinant(rows(unknown), most);
    if (sum === undefined) return undefined;
    numerators.set(unknown, terms(sum, size));
  }
  return { denominator: terms(denominator, size), numerators };
}
