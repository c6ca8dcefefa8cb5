import type { Topology } from './element.js';
import type { Equations } from './equations.js';
import { type Expansion, expand, lowestOf } from './expansion.js';
import type { ProbeRow } from './reading.js';
import { contradiction } from './refusals.js';
import type { Sum } from './whole-sums.js';

/** One polynomial of a row. It is multiplied by some elements over frequency, given as bits, and by the phase of a delay. */
export interface Part {
  /** 0 for the denominator, 1 + i for probe i. */
  readonly row: number;
  readonly laws: number;
  /** Slot of the delay, or −1. */
  readonly delay: number;
  readonly sum: Sum;
}

/** The parts of a topology, and what their factors are. */
export interface Parts extends Pick<Expansion, 'elements' | 'powers'> {
  readonly parts: readonly Part[];
}

const MOST_PRODUCTS = 20_000;

/** The polynomials of all rows, the plain ones of each row first; each row has a plain one, even if it is zero. */
export function expandedParts(
  topology: Topology,
  system: Equations,
  rows: readonly ProbeRow[],
  laws: readonly number[],
): Parts | undefined {
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
    laws,
    asked.map(({ shares }) => shares),
    MOST_PRODUCTS,
  );
  if (found === undefined) return undefined;
  if (found.denominator.length === 0) throw contradiction(topology);
  /** The laws are the first factors. */
  const split = (row: number, delay: number, sum: Sum): Part[] =>
    Array.from({ length: 2 ** laws.length }, (_, bits) => ({
      row,
      laws: bits,
      delay,
      sum: beginning(sum, bits, laws.length),
    })).filter((part) => isPlain(part) || part.sum.length > 0);
  const parts = [
    ...split(0, -1, found.denominator),
    ...asked.flatMap(({ row, delay }, k) => split(row, delay, found.numerators[k]!)),
  ];
  // A table of rows: the plain polynomial of every row, then what has laws or a delay.
  return { ...found, parts: [...parts.filter(isPlain), ...parts.filter((part) => !isPlain(part))] };
}

/** What has just these of its first `count` factors. */
function beginning(sum: Sum, bits: number, count: number): Sum {
  if (count === 0) return sum;
  const out: number[] = [];
  for (let k = 0; k < sum.length; k += 2) {
    if ((sum[k]! & (2 ** count - 1)) === bits) out.push(sum[k]!, sum[k + 1]!);
  }
  return out;
}

const isPlain = ({ laws, delay }: Part): boolean => laws === 0 && delay < 0;

/** The parts as one flat program over the numbers of the elements: powers of s / scale, rising, a row of coefficients each. */
export function partProgram({ parts, elements, powers }: Parts, rows: readonly ProbeRow[], scale: number) {
  const count = parts.reduce((sum, part) => sum + part.sum.length / 2, 0);
  /** What each product is made of, where it goes, and its constant. */
  const [products, places] = [new Int32Array(count), new Int32Array(count)];
  const constants = new Float64Array(count);
  let [n, least, most] = [0, Infinity, -Infinity];
  for (const { sum } of parts) {
    for (let i = 0; i < sum.length; i += 2, n++) {
      let power = 0;
      for (let left = sum[i]!; left !== 0; left &= left - 1) power += powers[lowestOf(left)]!;
      products[n] = sum[i]!;
      places[n] = power;
      constants[n] = sum[i + 1]!;
      least = Math.min(least, power);
      most = Math.max(most, power);
    }
  }
  const width = most - least + 1;
  const scales = Array.from({ length: width }, (_, power) => scale ** power);
  n = 0;
  parts.forEach(({ sum }, k) => {
    for (const end = n + sum.length / 2; n < end; n++) {
      const power = places[n]! - least;
      places[n] = k * width + power;
      constants[n]! *= scales[power]!;
    }
  });
  /** The factors of all products one after the other, and where those of each product end: read faster than bits. */
  const members = Uint8Array.from([...products].flatMap((bits) => [...elements.keys()].filter((k) => (bits >> k) & 1)));
  const ends = new Int32Array(count);
  for (let i = 0, end = 0; i < count; i++) {
    for (let left = products[i]!; left !== 0; left &= left - 1) end++;
    ends[i] = end;
  }
  const byBit = new Float64Array(elements.length);
  const factors = parts.map(({ row }) => rows[row - 1]?.factor ?? -1);

  /** Fills the coefficients, divided by the largest of the denominator; allocates nothing. */
  const fill = (numbers: Float64Array, values: Float64Array, out: Float64Array): void => {
    out.fill(0);
    for (let k = 0; k < byBit.length; k++) byBit[k] = numbers[elements[k]!]!;
    for (let i = 0, member = 0; i < count; i++) {
      let product = constants[i]!;
      for (const end = ends[i]!; member < end; member++) product *= byBit[members[member]!]!;
      out[places[i]!]! += product;
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
