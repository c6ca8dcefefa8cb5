import {
  compileNetwork,
  compilePlan,
  compilePolynomials,
  netlist,
  stateSpace,
  valuesOf,
} from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { probeColumns } from '@airspring/core/response';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { anyNetworkArbitrary } from '../../arbitrary/network.js';
import { test } from '../../arbitrary/property.js';
import { allFinite, answered } from '../answered.js';

const grid = Float64Array.of(1e-4, 1, 47, 3000, 1e7);

test.prop([anyNetworkArbitrary], { numRuns: 3 * fuzzRuns })(
  'any network is answered with numbers or refused, by every door',
  (network) => {
    answered(() => {
      const compiled = compilePolynomials(network.topology);
      if (compiled === undefined) return;
      for (const inReference of [false, true]) {
        const made = compiled.network(valuesOf(compiled.slots, network.values), inReference);
        expect(made.polynomials?.coefficients.every(Number.isFinite)).toBe(true);
      }
    });
    answered(() => {
      const { probes, slots, network: made } = compilePlan(network.topology);
      const { sweep } = made(valuesOf(slots, network.values));
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
    answered(() => allFinite(stateSpace(network)));
  },
);
