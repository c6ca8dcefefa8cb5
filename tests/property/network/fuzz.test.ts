import { compilePlan, compileTopology, elementValues, netlist, withoutCoilInductance } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { compileNetwork, probeColumns } from '@airspring/core/response';
import { test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { anyNetworkArbitrary } from '../../arbitrary/network.js';
import { answered } from '../answered.js';

const grid = Float64Array.of(1e-4, 1, 47, 3000, 1e7);

test.prop([anyNetworkArbitrary], { numRuns: 3 * fuzzRuns })(
  'any network is answered with numbers or refused, by every door',
  (network) => {
    answered(() => {
      const topology = compileTopology(network);
      if (topology === undefined) return;
      const out = new Float64Array((1 + topology.probes.length) * topology.width);
      topology.coefficients(elementValues(network.elements), out);
      expect(out.every(Number.isFinite)).toBe(true);
    });
    answered(() => {
      const { probes, sweep } = compilePlan(network);
      const out = probes.map(() => complexColumn(grid.length));
      const stopped = sweep(grid, out);
      const until = stopped < 0 ? grid.length : stopped;
      for (const { re, im } of out)
        expect([...re.slice(0, until), ...im.slice(0, until)].every(Number.isFinite)).toBe(true);
    });
    answered(() => {
      for (const { re, im } of Object.values(probeColumns(compileNetwork(network), grid))) {
        expect([...re, ...im].every(Number.isFinite)).toBe(true);
      }
    });
    answered(() => expect(netlist(network)).not.toMatch(/NaN|undefined|Infinity/));
    answered(() => withoutCoilInductance(network));
  },
);
