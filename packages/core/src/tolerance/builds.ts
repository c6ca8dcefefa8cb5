import type { System } from '../enclosure/index.js';
import { InputError, isInputError, refuse } from '../fault/index.js';
import type { CompiledNetwork } from '../network/index.js';
import { type ComplexColumn, complexColumn, uniformAt } from '../numeric/index.js';
import { unlessWhole } from '../numeric/refusal.js';
import { type FrequencyGrid, frequencyGrid, oneOf, optional, readFields } from '../quantity/index.js';
import { givenSystem } from '../response/compile.js';
import { HALF_POWER, levelColumn, referenceLevelOf } from '../response/index.js';
import { topOf } from '../response/passband.js';
import { compileDrawn, type Scatter } from './drawn-network.js';
import { compileLoudness, type LimitsOfBuilds, withinField } from './loudness-of-builds.js';

/** Builds of one system, one after the other. */
export interface Builds {
  /** Number of the first build. */
  readonly first: number;
  readonly count: number;
  /** Level of each build at each frequency for 1 V rms, dB: build after build. */
  readonly levels: Float64Array;
  /** f3 of each build, Hz; 0 where the level does not fall by half within the frequencies, −1 where it has fallen at their end. */
  readonly f3: Float64Array;
  /** Greatest level of each build within the limits that were given, at the frequency where it is least, dB. */
  readonly greatestLevels?: Float64Array;
}

/** What f3 is counted from, and what else is worked out of each build. */
export interface BuildsOptions {
  /** From the maximum, f3 is the lower end of the stretch around the greatest level of each build. Default: the asymptote. */
  readonly reference?: 'asymptote' | 'maximum' | undefined;
  /** Limits within which each build tells its greatest level. */
  readonly within?: LimitsOfBuilds | undefined;
}

/** The readers of these options. */
export const buildsShape = { reference: optional(oneOf('asymptote', 'maximum')), within: optional(withinField) };

/**
 * Works out some builds. The same seed and numbers give the same builds, in one piece or in several, on any machine.
 * A call gives at most 2²⁷ levels; more builds are worked out in parts.
 */
export type BuildsKernel = (seed: number, first: number, count: number) => Builds;

/** The greatest number of levels that a call gives: they take one gigabyte. */
const MOST_LEVELS = 2 ** 27;
/** The greatest number of builds: beyond it the random numbers would repeat. */
const MOST_BUILDS = 2 ** 32;

/** What a build gives where it has no f3 within the frequencies. */
export const BELOW = 0;
export const ABOVE = -1;

/** Refuses a system without an asymptote: here no other reference can be chosen. */
function judgeReference(reference: CompiledNetwork, density: number): void {
  try {
    referenceLevelOf(reference, density);
  } catch (error) {
    if (!isInputError(error)) throw error;
    const remedy = "Count from the maximum: { reference: 'maximum' }.";
    throw new InputError(error.faults.map((fault) => ({ ...fault, path: 'system', remedy })));
  }
}

/** Where a level rises above another for the last time before a frequency at which it is high enough; by a straight line between two frequencies on a logarithmic axis. */
function lastRise(frequencies: Float64Array, levels: Float64Array, to: number, wanted: number): number {
  if (levels[to]! < wanted) return ABOVE;
  for (let i = to - 1; i >= 0; i--) {
    const below = levels[i]!;
    if (below >= wanted) continue;
    const part = (wanted - below) / (levels[i + 1]! - below);
    return frequencies[i]! * (frequencies[i + 1]! / frequencies[i]!) ** part;
  }
  return BELOW;
}

/**
 * Prepares builds of a system whose numbers scatter. The numbers are those of its network: a driver's Mms, Cms, Rms, Bl, Re, Sd, the
 * compliance of the air `Cab`, the mass of the air in the `vent`. They scatter independently of each other.
 *
 * $$ v_e = v_{e,0}\,F_e^{-1}(u_{b,e}), \quad u_{b,e} \text{ uniform, of seed, build } b \text{ and number } e \text{ alone} $$
 *
 * The level of a build far above its corner is that of its own driver, so f3 is counted from there, or from the greatest level of the
 * build where it has no such level.
 *
 * @validity networks without a resonance that nothing damps; f3 by a straight line between two frequencies, from the greatest level at one of them
 * @neglects numbers that scatter together, such as fs and Vas of a driver: give those of the driver itself
 * @returns a kernel that works out any run of builds
 * @throws InputError `unknown-field`, `empty`, `inconsistent`, and those of `frequencyGrid`; the kernel `not-finite`, `out-of-range`
 * @source metropolis1949 (random sampling)
 * @source small1972direct (level and f3)
 * @example compileBuilds(system, { Cms: normal(0.08) }, logarithmicGrid(10, 200, 200))(7, 0, 1000).f3
 */
export function compileBuilds(
  system: System,
  scatter: Scatter,
  frequencies: FrequencyGrid,
  options: BuildsOptions = {},
): BuildsKernel {
  const { reference = 'asymptote', within } = readFields('options', options, buildsShape);
  const grid = frequencyGrid(frequencies);
  const last = grid.length - 1;
  // Level alone: every other probe would be swept in vain.
  const { compiled, nominal, draw } = compileDrawn(
    system,
    { ...givenSystem(system).network.topology, probes: {} },
    scatter,
  );
  const network = compiled.network(nominal);
  const columns: readonly ComplexColumn[] = network.probes.map(() => complexColumn(grid.length));
  const { density } = system.air;
  const asymptote = reference === 'asymptote' ? compiled.network(nominal, true) : undefined;
  if (asymptote) judgeReference(asymptote, density);
  const loudness = within && compileLoudness(system, scatter, within);
  return (seed, first, count) => {
    const uniform = uniformAt(seed);
    refuse([
      ...unlessWhole('count', count, 0, Math.floor(MOST_LEVELS / grid.length)),
      ...unlessWhole('first', first, 0, MOST_BUILDS - 1),
    ]);
    const levels = new Float64Array(count * grid.length);
    const f3 = new Float64Array(count);
    const greatestLevels = new Float64Array(loudness ? count : 0);
    for (let b = 0; b < count; b++) {
      const numbers = draw(uniform, first + b);
      network.load(numbers);
      network.sweep(grid, columns);
      const own = levels.subarray(b * grid.length, (b + 1) * grid.length);
      levelColumn(grid, columns[0]!, density, 1, own);
      asymptote?.load(numbers);
      const top = asymptote ? last : topOf(own);
      const wanted = (asymptote ? referenceLevelOf(asymptote, density) : own[top]!) - HALF_POWER;
      f3[b] = lastRise(grid, own, top, wanted);
      if (loudness) greatestLevels[b] = loudness(uniform, first + b);
    }
    return { first, count, levels, f3, ...(loudness && { greatestLevels }) };
  };
}
