import type { ComplexColumn } from '../numeric/index.js';
import { BLOCK, blockSolver } from './block-solver.js';
import type { Network } from './element.js';
import { branchesInSeries, equations } from './equations.js';
import { fillReading, readingOf, readingWeight } from './reading.js';
import { refuseBadNetwork } from './refusals.js';

/**
 * Elimination plan: any network, solved over frequency with guarded pivots.
 *
 * Fills a column for each probe, per volt of drive. Where no pivot is left, at a resonance that nothing damps,
 * it stops and returns that index; else −1. Writes into columns handed in and allocates nothing per frequency.
 */
export interface Plan {
  readonly probes: readonly string[];
  readonly sweep: (frequencies: Float64Array, out: readonly ComplexColumn[]) => number;
}

/**
 * Prepares the elimination of a network, distributed and frequency-dependent elements included. The order of pivots is
 * fixed once, and what does not change with frequency is eliminated once; all operations run over blocks of frequencies.
 * Where a pivot that is a sum nearly vanishes (the node of a lossless box at its tuning), that frequency alone is solved
 * again with row exchanges. A second road to the same numbers as `compileTopology`.
 *
 * @validity any network with a way to ground for each node
 * @neglects nothing
 * @throws InputError for a network without meaning, or whose equations cannot be solved whatever its values are
 * @returns the plan
 * @source desoer1969 (nodal analysis)
 * @example compilePlan(network).sweep(frequencies, columns) // -1: solved at all of them
 */
export function compilePlan(network: Network): Plan {
  refuseBadNetwork(network);
  const system = equations(network, branchesInSeries(network));
  const readings = Object.values(network.probes).map((probe) => readingOf(network, system, probe));
  const wanted = readings.flatMap(({ unknowns }) => unknowns.map(([unknown]) => unknown));
  const { values, listed, solution, load, solve } = blockSolver(network, system, wanted);
  const probes = readings.map((reading) => ({ ...reading, weight: readingWeight(reading, values, BLOCK) }));

  const sweep = (frequencies: Float64Array, out: readonly ComplexColumn[]): number => {
    for (let offset = 0; offset < frequencies.length; offset += BLOCK) {
      const block = frequencies.subarray(offset, offset + BLOCK);
      load(block);
      const stopped = solve();
      const count = stopped < 0 ? block.length : stopped;
      probes.forEach(({ unknowns, weight }, k) => {
        fillReading(unknowns, solution, weight(block, listed), count, out[k] as ComplexColumn, offset);
      });
      if (stopped >= 0) return offset + stopped;
    }
    return -1;
  };
  return { probes: Object.keys(network.probes), sweep };
}
