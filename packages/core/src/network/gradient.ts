import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { BLOCK, blockSolver } from './block-solver.js';
import { addScaled, type Factor, multiply, timesPower } from './column-arithmetic.js';
import { branchLaw, type Element, isBranch, type Network } from './element.js';
import { branchesInSeries, equations, isListed } from './equations.js';
import { listedSlopes } from './listed-columns.js';
import { fillReading, readingOf, readingWeight } from './reading.js';
import { missingProbe, refuseBadNetwork } from './refusals.js';
import { transposedSolver } from './transposed-solver.js';

/** A probe over frequency and how it changes, a column each. */
export interface GradientColumns {
  readonly value: ComplexColumn;
  /** ∂value/∂ln(element value): what a relative change of it does; in the order of `elements`. */
  readonly byElement: readonly ComplexColumn[];
  /** ∂value/∂ln f. */
  readonly byFrequency: ComplexColumn;
}

/** The gradient of one probe, ready to be swept. */
export interface NetworkGradient {
  /** The elements that have a value, in the order of the columns. */
  readonly elements: readonly string[];
  /** Fills the columns, per volt of drive. Returns the first place at which nothing damps the network, or −1. A kernel. */
  readonly sweep: (frequencies: Float64Array, out: GradientColumns) => number;
}

/**
 * Prepares the gradient of a probe by every element, by the adjoint equations: one elimination serves the solution and the
 * adjoint, whatever the number of elements.
 *
 * $$ A x = b,\\quad y = c^{\\mathsf T} x,\\quad A^{\\mathsf T}\\lambda = c,\\quad
 *    \\frac{\\partial y}{\\partial \\theta} = \\frac{\\partial c^{\\mathsf T}}{\\partial\\theta} x - \\lambda^{\\mathsf T}\\frac{\\partial A}{\\partial\\theta}\\,x $$
 *
 * @validity any network; an element given over frequency has no derivative by a value, and its slope over frequency is a
 * difference quotient over ±10⁻⁵
 * @neglects nothing
 * @returns the gradient, to be swept into {@link gradientColumns}
 * @throws InputError for a network without meaning; `empty` for a probe that is not there
 * @source director1969 adjoint network
 * @example compileGradient(network, 'radiatedFlow').sweep(frequencies, columns)
 */
export function compileGradient(network: Network, name: string): NetworkGradient {
  refuseBadNetwork(network);
  const probe = Object.hasOwn(network.probes, name) ? network.probes[name] : undefined;
  if (probe === undefined) throw missingProbe(name);
  const { elements } = network;
  const system = equations(network, branchesInSeries(network));
  const reading = readingOf(network, system, probe);
  const wanted = system.couplings.flatMap(({ columns }) => columns.map(([unknown]) => unknown));
  const { values, listed, solution, factored, load, solve } = blockSolver(network, system, wanted);
  const weight = readingWeight(reading, values, BLOCK);
  let factor: Factor = 1;
  const transposed = transposedSolver(factored, BLOCK, reading.unknowns, () => factor);
  const { adjoint } = transposed;
  const valued = elements.filter((element) => hasValue(element));
  /** For each element its column, and how its value enters the equations: as it is, or its inverse. */
  const places = elements.map((element, i) => ({
    place: valued.indexOf(element),
    exponent: exponentOf(element) * (isBranch(element) && (system.flowUnknown[i] as number) >= 0 ? -1 : 1),
  }));
  const slopes = listedSlopes(elements, BLOCK);
  const reach = complexColumn(BLOCK);
  const pair = complexColumn(BLOCK);

  const block = (frequencies: Float64Array, out: GradientColumns, offset: number): number => {
    load(frequencies);
    slopes.fill(frequencies);
    factor = weight(frequencies, listed);
    const stopped = solve(transposed);
    const count = stopped < 0 ? frequencies.length : stopped;
    const { value, byElement, byFrequency } = out;
    for (const { re, im } of [...byElement, byFrequency]) {
      re.fill(0, offset, offset + count);
      im.fill(0, offset, offset + count);
    }
    fillReading(reading.unknowns, solution, factor, count, value, offset);

    for (const { rows, columns, symbol, power, listed: corner } of system.couplings) {
      if (symbol < 0) continue;
      fillReading(rows, adjoint, 1, count, reach);
      fillReading(columns, solution, reach, count, pair);
      if (corner !== undefined) {
        multiply(pair, pair, slopes.of(symbol, corner), count);
        addScaled(byFrequency, pair, -1, count, offset);
        continue;
      }
      // −λ x times the entry of A, by ln of the element's value and by ln f.
      const { place, exponent } = places[symbol] as (typeof places)[number];
      timesPower(pair, -(values[symbol] as number), power, frequencies, count);
      addScaled(byElement[place] as ComplexColumn, pair, exponent, count, offset);
      if (power !== 0) addScaled(byFrequency, pair, power, count, offset);
    }
    // The probe's own dependence on the element it reads.
    const { symbol, power, unknowns } = reading;
    if (symbol >= 0 && listed[symbol] !== undefined) {
      fillReading(unknowns, solution, reading.factor, count, pair);
      multiply(pair, pair, slopes.of(symbol, 'Y'), count);
      addScaled(byFrequency, pair, 1, count, offset);
    } else if (symbol >= 0) {
      const { place, exponent } = places[symbol] as (typeof places)[number];
      fillReading(unknowns, solution, factor, count, pair);
      addScaled(byElement[place] as ComplexColumn, pair, exponent, count, offset);
      if (power !== 0) addScaled(byFrequency, pair, power, count, offset);
    }
    return stopped;
  };

  const sweep = (frequencies: Float64Array, out: GradientColumns): number => {
    for (let offset = 0; offset < frequencies.length; offset += BLOCK) {
      const stopped = block(frequencies.subarray(offset, offset + BLOCK), out, offset);
      if (stopped >= 0) return offset + stopped;
    }
    return -1;
  };
  return { elements: valued.map(({ name }) => name), sweep };
}

/** Room for a gradient over so many frequencies. */
export const gradientColumns = ({ elements }: NetworkGradient, length: number): GradientColumns => ({
  value: complexColumn(length),
  byElement: elements.map(() => complexColumn(length)),
  byFrequency: complexColumn(length),
});

const hasValue = (element: Element): boolean =>
  element.kind !== 'source' && element.kind !== 'meter' && !isListed(element);

/** The power of its value with which an element stands in nodal equations. */
const exponentOf = (element: Element): 1 | -1 => (isBranch(element) ? branchLaw[element.kind][0] : 1);
