import type { ComplexColumn } from '../numeric/index.js';
import { BLOCK, blockSolver } from './block-solver.js';
import { columnRoom } from './column-room.js';
import type { CompiledNetwork, CompiledTopology } from './compiled.js';
import type { Topology } from './element.js';
import { elimination } from './elimination.js';
import { compileNumbers, equations } from './equations.js';
import { gradientColumns, gradientOf } from './gradient.js';
import { fillReading, probeRows, termWeight } from './reading.js';
import { contradiction, refuseBadNumbers, refuseBadTopology } from './refusals.js';
import { branchesInSeries } from './series.js';
import { slotsOf } from './slots.js';

/**
 * Compiles an elimination plan, which solves any network over frequency with guarded pivots, including distributed and
 * frequency-dependent elements. The order of pivots is found once for the topology. Whatever does not change with frequency is
 * eliminated once for a set of numbers; all other operations run over blocks of frequencies. Where a pivot that is a sum nearly vanishes (the
 * node of a lossless box at its tuning), that frequency alone is solved again with row exchanges. The results check
 * those of `compilePolynomials`.
 *
 * @validity any network with a way to ground for each node
 * @neglects nothing
 * @throws InputError for a topology without meaning, or whose equations cannot be solved whatever its numbers are
 * @returns the compiled topology
 * @source desoer1969 (nodal analysis)
 * @example compilePlan(topology).network(values).sweep(frequencies, columns) // -1: solved at all of them
 */
export function compilePlan(topology: Topology): CompiledTopology {
  refuseBadTopology(topology);
  const system = equations(topology, branchesInSeries(topology));
  const slots = slotsOf(topology);
  const rows = probeRows(topology, system, slots);
  const probes = rows.map(({ name }) => name);
  const wanted = rows.flatMap(({ terms }) => terms.flatMap(({ unknowns }) => unknowns.map(([unknown]) => unknown)));
  // No two numbers are equal, so that nothing cancels by chance.
  const anyNumbers = Float64Array.from(topology.elements, (_, i) => 1 + 1 / (i + Math.SQRT2));
  const found = elimination(system, anyNumbers);
  if (found === undefined) throw contradiction(topology);
  const order = found.steps.map(({ row, column }) => ({ row, column }));

  const network: CompiledTopology['network'] = (first, inReference = false): CompiledNetwork => {
    const values = new Float64Array(slots.size);
    const fillNumbers = compileNumbers(topology, slots, system, inReference);
    const numbers = new Float64Array(topology.elements.length);
    const numbered = { topology, slots, system, values, numbers };
    let solver = undefined as ReturnType<typeof blockSolver> | undefined;
    const room = columnRoom(BLOCK);
    let slopes = new Map<number, ReturnType<typeof gradientOf>>();
    const load = (given: Float64Array) => {
      values.set(given);
      fillNumbers(values, numbers);
      refuseBadNumbers(topology, slots, values, numbers);
      slopes = new Map();
      if (solver?.renumber()) return;
      solver = undefined;
      room.restart();
    };
    load(first);
    const read = rows.map(({ factor, terms }) => ({
      factor,
      terms: terms.map((term) => ({ unknowns: term.unknowns, weight: termWeight(term, BLOCK) })),
    }));

    const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]): number => {
      solver ??= blockSolver(numbered, wanted, order, room.take);
      const { listed, solution } = solver;
      for (let offset = 0; offset < frequencies.length; offset += BLOCK) {
        const block = frequencies.subarray(offset, offset + BLOCK);
        solver.load(block);
        const stopped = solver.solve();
        const count = stopped < 0 ? block.length : stopped;
        read.forEach(({ factor, terms }, k) => {
          const column = out[k] as ComplexColumn;
          terms.forEach(({ unknowns, weight }, t) => {
            fillReading(unknowns, solution, weight(block, numbers, values, listed), count, column, offset, t > 0);
          });
          if (factor >= 0) scaleFrom(column, values[factor]!, count, offset);
        });
        if (stopped >= 0) return offset + stopped;
      }
      return -1;
    };
    const slope = (probe: number, frequencies: Float64Array, out: ComplexColumn): number => {
      const gradient = slopes.get(probe) ?? gradientOf(numbered, rows[probe] as (typeof rows)[number], order);
      slopes.set(probe, gradient);
      const columns = { ...gradientColumns(gradient, frequencies.length), byNumber: [] };
      const stopped = gradient.sweep(frequencies, columns);
      const { value, byFrequency } = columns;
      for (let i = 0; i < frequencies.length; i++) {
        const [a, b] = [value.re[i]!, value.im[i]!];
        const [c, d] = [byFrequency.re[i]!, byFrequency.im[i]!];
        const size = a * a + b * b;
        out.re[i] = (c * a + d * b) / size;
        out.im[i] = (d * a - c * b) / size;
      }
      return stopped;
    };
    return { probes, load, sweep, slope };
  };
  return { topology, slots, probes, network };
}

function scaleFrom({ re, im }: ComplexColumn, by: number, count: number, offset: number): void {
  for (let i = offset; i < offset + count; i++) {
    re[i] = re[i]! * by;
    im[i] = im[i]! * by;
  }
}
