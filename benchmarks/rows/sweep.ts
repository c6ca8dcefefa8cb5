import {
  compilePlan,
  type Network,
  type SweepRows,
  sweepRows,
  valuesOf,
} from '../../packages/core/src/network/index.js';
import { complexColumn } from '../../packages/core/src/numeric/index.js';
import { type Columns, compiledSystem, compileResponse, respond } from '../../packages/core/src/response/index.js';
import { simdSweep } from '../../packages/core/src/simd/index.js';
import { simulated } from '../agreement.js';
import { DRIVE, frequencies, makeSystem, networkA, networkB, POINTS, polynomials, system } from '../box.js';
import { COMPILING, runRow } from '../measure.js';
import { naiveA, naiveB } from '../peers/naive.js';

const driveVoltageRms = DRIVE as Columns['driveVoltageRms'];

const frequenciesOverTwoDecades = (count: number) =>
  Float64Array.from({ length: count }, (_, i) => 10 * 100 ** (i / count));

function polynomialSweep(network: Network, count: number, kernel: SweepRows = sweepRows) {
  const { coefficients, width, scale, probes } = polynomials(network);
  const at = frequenciesOverTwoDecades(count);
  const out = probes.map(() => complexColumn(count));
  const work = complexColumn(count);
  return () => kernel(coefficients, width, scale, at, out, work);
}

function planSweep(network: Network, count: number) {
  const { slots, probes, network: made } = compilePlan(network.topology);
  const { sweep } = made(valuesOf(slots, network.values));
  const at = frequenciesOverTwoDecades(count);
  const out = probes.map(() => complexColumn(count));
  return () => sweep(at, out);
}

const grid = frequencies(POINTS);
const counts = [100, 1000, 10_000, 100_000, 1_000_000];

await runRow({
  'ours-A': () => ({ call: polynomialSweep(networkA, POINTS) }),
  'wasm-A': () => {
    const simd = simdSweep();
    if (!simd.ok) throw new Error(simd.because[0]?.text);
    return { call: polynomialSweep(networkA, POINTS, simd.sweepRows) };
  },
  'wasm-made': () => ({ call: simdSweep }),
  'plan-A': () => ({ call: planSweep(networkA, POINTS) }),
  'naive-A': () => ({ call: () => naiveA(grid) }),
  'simulator-A': () => ({ call: simulated }),
  'B-compiled': () => {
    const { fill, columns } = compileResponse(compiledSystem(system), system.air.density);
    const out = columns(grid.length);
    return { call: () => fill(grid, DRIVE, out) };
  },
  'B-again': () => ({ call: () => respond(system, grid, { driveVoltageRms }) }),
  'B-cold': () => ({ call: () => respond(makeSystem(), grid, { driveVoltageRms }), warming: COMPILING }),
  'ours-B-complex': () => ({ call: polynomialSweep(networkB, POINTS) }),
  'naive-B': () => ({ call: () => naiveB(grid) }),
  ...Object.fromEntries(
    counts.flatMap((count) => [
      [`ours-${count}`, () => ({ call: polynomialSweep(networkA, count), per: count })],
      [`plan-${count}`, () => ({ call: planSweep(networkA, count), per: count })],
    ]),
  ),
});
