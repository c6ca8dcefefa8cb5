import type { CompiledTopology } from './compiled.js';
import type { Element, Topology } from './element.js';
import { compileNumbers, equations } from './equations.js';
import { lawSweep } from './law-sweep.js';
import { plainSweep } from './plain-sweep.js';
import { expandedParts, partProgram } from './polynomial-parts.js';
import { predictedProducts } from './predicted-products.js';
import { probeRows } from './reading.js';
import { refuseBadNumbers, refuseBadTopology } from './refusals.js';
import { slotsOf } from './slots.js';
import { type SweepRows, sweepRows } from './sweep.js';

/** The greatest number of products. Beyond it the elimination plan compiles sooner and sweeps as fast. */
const MOST_PRODUCTS = 600;
/** Elements over frequency that the expansion takes as symbols: each doubles the number of polynomials. */
const MOST_LAWS = 3;
/** Angular frequency by which s is divided, so that coefficients of any size stay within double precision. */
const SCALE = 2 * Math.PI * 100;

/**
 * Derives the polynomials of a network once for a topology: sums of element products over one shared denominator,
 *
 * $$ H_i(s) = \frac{\sum_m Y_m N_{i,m}(s)}{\sum_m Y_m D_m(s)}, \quad D = \det A(s), \quad N_i = \text{Cramer's numerator} $$
 *
 * where $A$ are the nodal equations and $Y_m$ products of up to three elements over frequency: a determinant is linear in
 * each. No interpolation and no elimination takes place, so nothing is divided that can vanish.
 *
 * @validity no lines, at most three laws, 31 elements (motors and pistons count twice) and 600 products: else `undefined`, and an elimination plan does it
 * @neglects nothing: the result is exact in the element values
 * @throws InputError for a topology without meaning
 * @source desoer1969 ch. 10 (nodal analysis of networks with transformers and gyrators)
 * @returns the compiled topology, or `undefined`
 * @example compilePolynomials(closedBox({ drivers, netVolume: '40 L' }).network.topology)?.probes
 */
export const compilePolynomials = (topology: Topology, kernel: SweepRows = sweepRows): CompiledTopology | undefined =>
  compiledBy(topology, kernel, lawSweep, MOST_LAWS);

/**
 * The same without elements over frequency and without delays, in four fifths of the code.
 *
 * @validity no lines, laws or delays, at most 31 elements (motors and pistons count twice) and 600 products: else `undefined`
 * @neglects nothing: the result is exact in the element values
 * @throws InputError for a topology without meaning
 * @source desoer1969 ch. 10 (nodal analysis of networks with transformers and gyrators)
 * @returns the compiled topology, or `undefined`
 * @example compileLumped(closedBox({ drivers, netVolume: '40 L' }).network.topology)?.probes
 */
export const compileLumped = (topology: Topology, kernel: SweepRows = sweepRows): CompiledTopology | undefined =>
  compiledBy(topology, kernel, undefined, 0);

function compiledBy(
  topology: Topology,
  kernel: SweepRows,
  sweepWithLaws: typeof lawSweep | undefined,
  mostLaws: number,
): CompiledTopology | undefined {
  refuseBadTopology(topology);
  const { elements } = topology;
  const laws = [...elements.keys()].filter((i) => (elements[i] as Element).kind === 'law');
  if (laws.length > mostLaws || elements.some(({ kind }) => kind === 'line')) return undefined;
  // Fewer unknowns; nothing is eliminated here, so that nothing is lost by large admittances beside small ones.
  const system = equations(topology);
  const slots = slotsOf(topology);
  const rows = probeRows(topology, system, slots);
  if (predictedProducts(system) > MOST_PRODUCTS) return undefined;
  const expanded = expandedParts(topology, system, rows, laws);
  if (expanded === undefined) return undefined;
  const { parts } = expanded;
  const { width, fill } = partProgram(expanded, rows, SCALE);
  const undelayed = parts.every(({ delay }) => delay < 0);
  if (!undelayed && sweepWithLaws === undefined) return undefined;
  const probes = rows.map(({ name }) => name);

  const network: CompiledTopology['network'] = (first, inReference = false) => {
    const values = new Float64Array(slots.size);
    const fillNumbers = compileNumbers(topology, slots, system, inReference);
    const numbers = new Float64Array(elements.length);
    const coefficients = new Float64Array((parts.length + 1) * width);
    const load = (given: Float64Array) => {
      values.set(given);
      fillNumbers(values, numbers);
      refuseBadNumbers(topology, slots, values, numbers);
      fill(numbers, values, coefficients);
    };
    load(first);
    // The plain polynomials stand first. Where the reference leaves out every law, only these are needed.
    const plain = undelayed && laws.every((law) => numbers[law] === 0);
    const shown = plain ? coefficients.subarray(0, (1 + rows.length) * width) : coefficients;
    const polynomials = { coefficients: shown, width, scale: SCALE };
    if (plain || sweepWithLaws === undefined) return { probes, load, polynomials, ...plainSweep(polynomials, kernel) };
    return { probes, load, ...sweepWithLaws({ topology, slots, laws, parts, values, numbers, polynomials }) };
  };
  return { topology, slots, probes, network };
}
