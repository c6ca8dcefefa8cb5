import { isRounding } from '../numeric/index.js';
import type { Listed, Stamp } from './equations.js';

/** A column of an element given over frequency, times a weight. */
export interface ListedTerm {
  readonly weight: number;
  readonly symbol: number;
  readonly corner: Listed;
}

/** An entry of the equations over all frequencies: constant + rising s + falling / s, plus columns of elements. */
export interface Entry {
  readonly row: number;
  readonly column: number;
  constant: number;
  rising: number;
  falling: number;
  /** Sizes of the terms of the three sums. What is left after they cancel is compared with these. */
  readonly sizes: [constant: number, rising: number, falling: number];
  listed: readonly ListedTerm[];
  /** Made of the laws alone, of no element's value: a whole number. */
  structural: boolean;
  /** Changes while frequencies are swept: the above is what it starts from. */
  swept: boolean;
}

/** The content of an entry, without its place. */
export type Sum = Omit<Entry, 'row' | 'column' | 'swept'>;

/** A sum this much smaller than its parts has lost too many digits. */
export const LOST = 1e-4;

const unlessRounding = (value: number, size: number) => (isRounding(value, size) ? 0 : value);

export const emptyEntry = (row: number, column: number): Entry => ({
  row,
  column,
  constant: 0,
  rising: 0,
  falling: 0,
  sizes: [0, 0, 0],
  listed: [],
  structural: true,
  swept: false,
});

/** Takes its numbers out; what it is made of stays known. */
export function clear(entry: Entry): void {
  entry.constant = entry.rising = entry.falling = 0;
  entry.sizes.fill(0);
  entry.listed = [];
}

/** What a stamp adds. */
export function stamped({ sign, symbol, power, listed }: Stamp, numbers: Float64Array): Sum {
  const value = listed !== undefined ? 0 : symbol < 0 ? sign : sign * numbers[symbol]!;
  const [constant, rising, falling] = [power === 0 ? value : 0, power === 1 ? value : 0, power === -1 ? value : 0];
  return {
    constant,
    rising,
    falling,
    sizes: [Math.abs(constant), Math.abs(rising), Math.abs(falling)],
    listed: listed === undefined ? [] : [{ weight: sign, symbol, corner: listed }],
    structural: symbol < 0,
  };
}

/** entry ← entry + factor × sum, with a factor of 1 or −1. */
export function add(entry: Entry, sum: Sum, factor: 1 | -1): void {
  entry.constant += factor * sum.constant;
  entry.rising += factor * sum.rising;
  entry.falling += factor * sum.falling;
  for (const k of [0, 1, 2] as const) entry.sizes[k] += sum.sizes[k];
  entry.constant = unlessRounding(entry.constant, entry.sizes[0]);
  entry.rising = unlessRounding(entry.rising, entry.sizes[1]);
  entry.falling = unlessRounding(entry.falling, entry.sizes[2]);
  for (const term of sum.listed) entry.listed = [...entry.listed, { ...term, weight: factor * term.weight }];
  entry.structural &&= sum.structural;
}

/** entry ← number × entry. */
export function scale(entry: Entry, by: number): void {
  entry.constant *= by;
  entry.rising *= by;
  entry.falling *= by;
  for (const k of [0, 1, 2] as const) entry.sizes[k] *= Math.abs(by);
  entry.listed = entry.listed.map((term) => ({ ...term, weight: term.weight * by }));
}

/** a × b, where that again is such a sum: no s², and a column of an element only times a constant. */
export function product(a: Sum, b: Sum): Sum | undefined {
  if (a.rising * b.rising !== 0 || a.falling * b.falling !== 0) return undefined;
  if ((a.listed.length > 0 && !isConstant(b)) || (b.listed.length > 0 && !isConstant(a))) return undefined;
  const [ac, ar, af] = a.sizes;
  const [bc, br, bf] = b.sizes;
  return {
    constant: a.constant * b.constant + a.rising * b.falling + a.falling * b.rising,
    rising: a.constant * b.rising + a.rising * b.constant,
    falling: a.constant * b.falling + a.falling * b.constant,
    sizes: [ac * bc + ar * bf + af * br, ac * br + ar * bc, ac * bf + af * bc],
    listed: [
      ...a.listed.map((term) => ({ ...term, weight: term.weight * b.constant })),
      ...b.listed.map((term) => ({ ...term, weight: term.weight * a.constant })),
    ],
    structural: a.structural && b.structural,
  };
}

/** One real number at every frequency. */
export const isConstant = ({ rising, falling, listed }: Sum): boolean =>
  rising === 0 && falling === 0 && listed.length === 0;

/** Nothing is left of it. */
export const isNothing = (entry: Entry): boolean => !entry.swept && entry.constant === 0 && isConstant(entry);

/** Whether it can vanish, or nearly, at some frequency: a sum whose parts can cancel. */
export function canVanish({ constant, rising, falling, sizes, listed, swept }: Entry): boolean {
  if (swept || listed.length > 0) return true; // a corner of a chain matrix at a quarter wave, an admittance of nothing
  if (rising * falling > 0) return true; // mass against spring
  return [constant, rising, falling].some((value, k) => Math.abs(value) < LOST * sizes[k]!);
}
