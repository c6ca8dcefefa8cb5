import type { System } from '../enclosure/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { refuseBadLimits } from '../limit/greatest-level.js';
import { greatestDrive, type Limit } from '../limit/index.js';
import { complexColumn } from '../numeric/index.js';
import { unlessFiniteColumn } from '../numeric/refusal.js';
import { type FrequencyGrid, frequencyGrid, given, nested, optional } from '../quantity/index.js';
import { probeIndex } from '../response/compile.js';
import { levelColumn } from '../response/index.js';
import { compileDrawn, type DrawnNetwork, type Scatter } from './drawn-network.js';

/** Limits that no build may pass, and the frequencies at which they count. */
export interface LimitsOfBuilds {
  readonly limits: readonly Limit[];
  readonly frequencies: FrequencyGrid;
  /** What the place of the listener adds to the level at 1 m in half space at each frequency, dB; default nothing. */
  readonly gain?: ArrayLike<number> | undefined;
}

/** How {@link LimitsOfBuilds} are read. */
export const withinField = nested({
  limits: given<readonly Limit[]>(),
  frequencies: given<FrequencyGrid>(),
  gain: optional(given<ArrayLike<number>>()),
});

/** A gain must be a number at each frequency. */
function judgeGain(gain: ArrayLike<number> | undefined, points: number): Fault[] {
  if (gain === undefined) return [];
  const path = 'options.within.gain';
  if (gain.length === points) return unlessFiniteColumn(path, gain);
  const expected = `${points} values, one for each frequency`;
  return [{ code: 'inconsistent', path, got: gain.length, expected, remedy: 'Give as many.' }];
}

/** Prepares the greatest level of a build within some limits, at the frequency where it is least: dB, as `greatestLevel` gives it. */
export function compileLoudness(
  system: System,
  scatter: Scatter,
  { limits, frequencies, gain }: LimitsOfBuilds,
): (uniform: Parameters<DrawnNetwork['draw']>[0], build: number) => number {
  const grid = frequencyGrid(frequencies, 'options.within.frequencies');
  refuse(judgeGain(gain, grid.length));
  refuseBadLimits(limits);
  const { topology } = system.network;
  const limited = new Set(limits.flatMap(({ probe }) => probe ?? []));
  const probes = Object.fromEntries(Object.entries(topology.probes).filter(([name]) => limited.has(name)));
  const { compiled, nominal, draw } = compileDrawn(system, { ...topology, probes }, scatter);
  const network = compiled.network(nominal);
  const swept = network.probes.map(() => complexColumn(grid.length));
  const columnOf = (name: string) => swept[probeIndex(network.probes, name)]!;
  const columns = limits.map(({ probe }) => (probe === undefined ? undefined : columnOf(probe)));
  const flow = columnOf('radiatedFlow');
  const [drives, levels] = [new Float64Array(grid.length), new Float64Array(grid.length)];
  const binding = new Int32Array(grid.length);
  return (uniform, build) => {
    network.load(draw(uniform, build));
    network.sweep(grid, swept);
    greatestDrive(grid, limits, columns, drives, binding);
    levelColumn(grid, flow, system.air.density, 1, levels);
    let least = Infinity;
    for (let i = 0; i < levels.length; i++) {
      least = Math.min(least, levels[i]! + 20 * Math.log10(drives[i]!) + (gain?.[i] ?? 0));
    }
    return least;
  };
}
