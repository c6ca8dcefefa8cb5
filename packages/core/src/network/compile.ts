import type { Element, Network } from './element.js';
import { equations, isListed, symbolValue } from './equations.js';
import { expand, type Term } from './expansion.js';
import { type Reading, readingOf } from './reading.js';
import { contradiction, refuseBadNetwork } from './refusals.js';

/**
 * A lumped topology with its polynomials written out as sums of element products, for any values of its elements.
 * Row 0 is the denominator that all share, row 1 + i the numerator of probe i; a row holds the powers of s / scale, rising.
 */
export interface Topology {
  /** Element names in the order of the values. */
  readonly elements: readonly string[];
  /** Probe names in the order of the rows. */
  readonly probes: readonly string[];
  /** Length of a row: the highest power of s, plus one. */
  readonly width: number;
  /** Angular frequency by which s is divided, so that coefficients of any size stay within double precision. */
  readonly scale: number;
  /** Fills `(1 + probes) × width` coefficients from the values of the elements; allocates nothing. */
  readonly coefficients: (values: Float64Array, out: Float64Array) => void;
}

const MOST_PRODUCTS = 20_000;

/** A network's element values in the order of its topology: admittances without their power of s. */
export const elementValues = (elements: readonly Element[]): Float64Array => Float64Array.from(elements, symbolValue);

/** Numerator of a probe: products of its unknowns joined, those that cancel dropped. */
function numerator(read: Reading, of: ReadonlyMap<number, readonly Term[]>): Term[] {
  const joined = new Map<string, Term>();
  for (const [unknown, sign] of read.unknowns) {
    for (const term of of.get(unknown) ?? []) {
      const symbols = read.symbol < 0 ? term.symbols : [...term.symbols, read.symbol];
      const power = term.power + read.power;
      const key = `${power} ${symbols}`;
      const coefficient = (joined.get(key)?.coefficient ?? 0) + sign * term.coefficient;
      if (coefficient === 0) joined.delete(key);
      else joined.set(key, { coefficient, power, symbols });
    }
  }
  return [...joined.values()];
}

/**
 * Derives the polynomials of a lumped network, once per topology: sums of element products over one shared denominator,
 *
 * $$ H_i(s) = \frac{N_i(s)}{D(s)}, \quad D = \det A(s), \quad N_i = \text{Cramer's numerator} $$
 *
 * where $A$ are the nodal equations. No interpolation and no elimination takes place, so nothing is divided that can vanish.
 *
 * @validity lumped elements only, and at most 20,000 products: else `undefined`, and an elimination plan does it
 * @neglects nothing: the result is exact in the element values
 * @throws InputError for a network without meaning
 * @source desoer1969 ch. 10 (nodal analysis of networks with transformers and gyrators)
 * @returns the polynomials for any values of the elements, or `undefined`
 * @example compileTopology(closedBox({ drivers, netVolume: '40 L' }).network)?.width // powers of s
 */
export function compileTopology(network: Network): Topology | undefined {
  refuseBadNetwork(network);
  if (network.elements.some(isListed)) return undefined;
  const plan = equations(network);
  const probes = Object.entries(network.probes);
  const readings = probes.map(([, probe]) => readingOf(network, plan, probe));
  const unknowns = new Set(readings.flatMap((reading) => reading.unknowns.map(([unknown]) => unknown)));
  const expanded = expand(plan, [...unknowns], MOST_PRODUCTS);
  if (expanded === undefined) return undefined;
  if (expanded.denominator.length === 0) throw contradiction(network);
  const rows = [expanded.denominator, ...readings.map((read) => numerator(read, expanded.numerators))];

  const powers = rows.flatMap((row) => row.map((term) => term.power));
  const least = Math.min(...powers);
  const width = Math.max(...powers) - least + 1;
  const factors = [1, ...probes.map(([, probe]) => probe.factor ?? 1)];
  const scale = 2 * Math.PI * 100;

  // One flat program: [place, symbols…] of each product, and its constant.
  const program: number[] = [];
  const constants: number[] = [];
  rows.forEach((row, r) => {
    for (const { coefficient, power, symbols } of row) {
      program.push(r * width + power - least, symbols.length, ...symbols);
      constants.push(coefficient * (factors[r] as number) * scale ** (power - least));
    }
  });
  const code = Int32Array.from(program);
  const constant = Float64Array.from(constants);

  const coefficients = (values: Float64Array, out: Float64Array) => {
    out.fill(0);
    for (let i = 0, n = 0; i < code.length; n++) {
      const place = code[i] as number;
      const end = i + 2 + (code[i + 1] as number);
      let product = constant[n] as number;
      for (i += 2; i < end; i++) product *= values[code[i] as number] as number;
      (out[place] as number) += product;
    }
    let largest = 0;
    for (let k = 0; k < width; k++) largest = Math.max(largest, Math.abs(out[k] as number));
    const unit = largest > 0 ? 1 / largest : 0;
    for (let k = 0; k < out.length; k++) (out[k] as number) *= unit;
  };
  return {
    elements: network.elements.map((element) => element.name),
    probes: probes.map(([name]) => name),
    width,
    scale,
    coefficients,
  };
}
