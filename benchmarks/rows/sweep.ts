import { compilePlan, type Network, sweepRows } from '../../packages/core/src/network/index.js';
import { complexColumn } from '../../packages/core/src/numeric/index.js';
import { type Columns, respond } from '../../packages/core/src/response/index.js';
import { simulated } from '../agreement.js';
import { DRIVE, frequencies, networkA, networkB, POINTS, polynomials, system } from '../box.js';
import { runRow } from '../measure.js';
import { naiveA, naiveB } from '../peers/naive.js';

const driveVoltageRms = DRIVE as Columns['driveVoltageRms'];

const frequenciesOverTwoDecades = (count: number) =>
  Float64Array.from({ length: count }, (_, i) => 10 * 100 ** (i / count));

function polynomialSweep(network: Network, count: number) {
  const { topology, coefficients } = polynomials(network);
  const at = frequenciesOverTwoDecades(count);
  const out = topology.probes.map(() => complexColumn(count));
  const work = complexColumn(count);
  return () => sweepRows(coefficients, topology.width, topology.scale, at, out, work);
}

function planSweep(network: Network, count: number) {
  const plan = compilePlan(network);
  const at = frequenciesOverTwoDecades(count);
  const out = plan.probes.map(() => complexColumn(count));
  return () => plan.sweep(at, out);
}

const grid = frequencies(POINTS);
const counts = [100, 1000, 10_000, 100_000, 1_000_000];

await runRow({
  'ours-A': () => ({ call: polynomialSweep(networkA, POINTS) }),
  'plan-A': () => ({ call: planSweep(networkA, POINTS) }),
  'naive-A': () => ({ call: () => naiveA(grid) }),
  'simulator-A': () => ({ call: simulated }),
  'ours-B': () => ({ call: () => respond(system, grid, { driveVoltageRms }) }),
  'ours-B-complex': () => ({ call: polynomialSweep(networkB, POINTS) }),
  'naive-B': () => ({ call: () => naiveB(grid) }),
  ...Object.fromEntries(
    counts.flatMap((count) => [
      [`ours-${count}`, () => ({ call: polynomialSweep(networkA, count), per: count })],
      [`plan-${count}`, () => ({ call: planSweep(networkA, count), per: count })],
    ]),
  ),
});
