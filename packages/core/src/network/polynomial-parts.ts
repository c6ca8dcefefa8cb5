import type { Topology } from './element.js';
import type { Equations } from './equations.js';
import { expand, type Term } from './expansion.js';
import type { ProbeRow } from './reading.js';
import { contradiction } from './refusals.js';

/** One polynomial of a row. It is multiplied by some elements over frequency, given as bits, and by the phase of a delay. */
export interface Part {
  /** 0 for the denominator, 1 + i for probe i. */
  readonly row: number;
  readonly laws: number;
  /** Slot of the delay, or −1. */
  readonly delay: number;
  readonly terms: readonly Term[];
}

const MOST_PRODUCTS = 20_000;

/** The polynomials of all rows, the plain ones of each row first; a plain one stands in each row, even if it is nothing. */
export function expandedParts(
  topology: Topology,
  system: Equations,
  rows: readonly ProbeRow[],
  laws: readonly number[],
): readonly Part[] | undefined {
  const asked = rows.flatMap(({ terms }, k) =>
    [...new Set([-1, ...terms.map(({ delay }) => delay)])].map((delay) => ({
      row: 1 + k,
      delay,
      shares: terms
        .filter((term) => term.delay === delay)
        .flatMap(({ unknowns, symbol, sign }) =>
          unknowns.map(([unknown, turn]) => ({ unknown, coefficient: sign * turn, symbol })),
        ),
    })),
  );
  const found = expand(
    system,
    asked.map(({ shares }) => shares),
    MOST_PRODUCTS,
  );
  if (found === undefined) return undefined;
  if (found.denominator.length === 0) throw contradiction(topology);
  const bitsOf = (symbols: readonly number[]): number =>
    laws.reduce((bits, law, k) => (symbols.includes(law) ? bits + 2 ** k : bits), 0);
  const split = (row: number, delay: number, terms: readonly Term[]): Part[] => {
    const byLaws = new Map<number, Term[]>(delay < 0 ? [[0, []]] : []);
    for (const term of terms) {
      const bits = bitsOf(term.symbols);
      const own = byLaws.get(bits) ?? [];
      own.push(
        laws.length === 0 ? term : { ...term, symbols: term.symbols.filter((symbol) => !laws.includes(symbol)) },
      );
      byLaws.set(bits, own);
    }
    return [...byLaws].map(([bits, own]) => ({ row, laws: bits, delay, terms: own }));
  };
  const parts = [
    ...split(0, -1, found.denominator),
    ...asked.flatMap(({ row, delay }, k) => split(row, delay, found.numerators[k] as readonly Term[])),
  ];
  // A table of rows: the plain polynomial of every row, then what has laws or a delay.
  return [...parts.filter(isPlain), ...parts.filter((part) => !isPlain(part))];
}

const isPlain = ({ laws, delay }: Part): boolean => laws === 0 && delay < 0;

/** The parts as one flat program over the numbers of the elements: powers of s / scale, rising, a row of coefficients each. */
export function partProgram(parts: readonly Part[], rows: readonly ProbeRow[], scale: number) {
  let [least, most] = [Infinity, -Infinity];
  let length = 0;
  let count = 0;
  for (const { terms } of parts) {
    for (const { power, symbols } of terms) {
      least = Math.min(least, power);
      most = Math.max(most, power);
      length += 2 + symbols.length;
      count++;
    }
  }
  const width = most - least + 1;
  // [place, how many symbols, symbols…] of each product, and its constant.
  const code = new Int32Array(length);
  const constant = new Float64Array(count);
  const scales = Array.from({ length: width }, (_, power) => scale ** power);
  let at = 0;
  let n = 0;
  parts.forEach(({ terms }, k) => {
    for (const { coefficient, power, symbols } of terms) {
      code[at++] = k * width + power - least;
      code[at++] = symbols.length;
      for (const symbol of symbols) code[at++] = symbol;
      constant[n++] = coefficient * scales[power - least]!;
    }
  });
  const factors = parts.map(({ row }) => rows[row - 1]?.factor ?? -1);

  /** Fills the coefficients, divided by the largest of the denominator; allocates nothing. */
  const fill = (numbers: Float64Array, values: Float64Array, out: Float64Array): void => {
    out.fill(0);
    for (let i = 0, n = 0; i < code.length; n++) {
      const place = code[i]!;
      const end = i + 2 + code[i + 1]!;
      let product = constant[n]!;
      for (i += 2; i < end; i++) product *= numbers[code[i]!]!;
      out[place]! += product;
    }
    let largest = 0;
    for (let k = 0; k < width; k++) largest = Math.max(largest, Math.abs(out[k]!));
    const unit = largest > 0 ? 1 / largest : 1;
    for (let k = 0; k < parts.length; k++) {
      const factor = factors[k]!;
      const by = factor < 0 ? unit : unit * values[factor]!;
      for (let place = k * width; place < (k + 1) * width; place++) out[place]! *= by;
    }
  };
  return { width, fill };
}
