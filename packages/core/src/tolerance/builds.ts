import type { System } from '../enclosure/index.js';
import { type Fault, InputError, isInputError, refuse } from '../fault/index.js';
import { type CompiledNetwork, compile, valuesOf } from '../network/index.js';
import { type ComplexColumn, complexColumn, uniformAt } from '../numeric/index.js';
import { unlessWhole } from '../numeric/refusal.js';
import { type FrequencyGrid, frequencyGrid } from '../quantity/index.js';
import { HALF_POWER, levelColumn, referenceLevelOf } from '../response/index.js';
import type { Distribution } from './distribution.js';

/** How the numbers of a network scatter, by their names: `{ Cms: normal(0.08), vent: within(0.03) }`. */
export type Scatter = Readonly<Record<string, Distribution>>;

/** Builds of one system, one after the other. */
export interface Builds {
  /** Number of the first build. */
  readonly first: number;
  readonly count: number;
  /** Level of each build at each frequency for 1 V rms, dB: build after build. */
  readonly levels: Float64Array;
  /** f3 of each build, Hz; 0 where the level does not fall by half within the frequencies, −1 where it has fallen at their end. */
  readonly f3: Float64Array;
}

/**
 * Works out some builds. The same seed and numbers give the same builds, in one piece or in several, on any machine.
 * A call gives at most 2²⁷ levels; more builds are worked out in parts.
 */
export type BuildsKernel = (seed: number, first: number, count: number) => Builds;

/** Levels that a call gives at most: they take one gigabyte. */
const MOST_LEVELS = 2 ** 27;
/** The random numbers of more builds repeat. */
const MOST_BUILDS = 2 ** 32;

/** What a build gives where it has no f3 within the frequencies. */
export const BELOW = 0;
export const ABOVE = -1;

/** A number that scatters: its slot, and the factor on it at a probability. */
interface Place {
  readonly at: number;
  readonly factorAt: (probability: number) => number;
}

/** The slots of the names that scatter, or a fault for each that the network does not have and for each that is no distribution. */
function placesOf(of: ReadonlyMap<string, { readonly at: number; readonly count: number }>, scatter: Scatter) {
  const faults: Fault[] = [];
  const places = Object.entries(scatter ?? {}).map(([name, distribution]): Place => {
    const path = `scatter.${name}`;
    const slot = of.get(name);
    if (slot?.count !== 1) {
      const expected = `one of ${[...of].flatMap(([known, { count }]) => (count === 1 ? [known] : [])).join(', ')}`;
      faults.push({ code: 'unknown-field', path, got: name, expected, remedy: 'Correct the name.' });
    }
    if (typeof distribution?.factor !== 'function' || !(distribution.standardDeviation > 0)) {
      const expected = 'a distribution with a factor and a standard deviation above 0';
      faults.push({ code: 'inconsistent', path, got: distribution, expected, remedy: 'Make it with normal(0.05).' });
    }
    const factorAt = (probability: number): number => {
      const got = distribution.factor(probability);
      if (got > 0 && got < Infinity) return got;
      const expected = `a factor above 0 at a probability of ${probability}`;
      const remedy = 'Correct the distribution, or narrow it.';
      throw new InputError([{ code: 'inconsistent', path: `${path}.factor`, got, expected, remedy }]);
    };
    return { at: slot?.at ?? 0, factorAt };
  });
  if (places.length === 0) {
    const expected = 'a distribution for one number at least';
    faults.push({ code: 'empty', path: 'scatter', got: scatter, expected, remedy: 'Say what scatters.' });
  }
  refuse(faults);
  return places;
}

/** Refuses a system without an asymptote: here no other reference can be chosen. */
function judgeReference(reference: CompiledNetwork, density: number): void {
  try {
    referenceLevelOf(reference, density);
  } catch (error) {
    if (!isInputError(error)) throw error;
    const remedy = 'Take a system that has an f3; a band-pass and an open baffle have none.';
    throw new InputError(error.faults.map((fault) => ({ ...fault, path: 'system', remedy })));
  }
}

/** Where a level last rises above another, going up; by a straight line between two frequencies on a logarithmic axis. */
function lastCrossing(frequencies: Float64Array, levels: Float64Array, from: number, wanted: number): number {
  const last = frequencies.length - 1;
  if (levels[from + last]! < wanted) return ABOVE;
  for (let i = last - 1; i >= 0; i--) {
    const below = levels[from + i]!;
    if (below >= wanted) continue;
    const part = (wanted - below) / (levels[from + i + 1]! - below);
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
 * The level of a build far above its corner is that of its own driver, so f3 is counted from there.
 *
 * @validity networks without a resonance that nothing damps; f3 by a straight line between two frequencies
 * @neglects numbers that scatter together, such as fs and Vas of a driver: give those of the driver itself
 * @returns a kernel that works out any run of builds
 * @throws InputError `unknown-field`, `empty`, `inconsistent`, and those of `frequencyGrid`; the kernel `not-finite`, `out-of-range`
 * @source metropolis1949 (random sampling)
 * @source small1972direct (level and f3)
 * @example compileBuilds(system, { Cms: normal(0.08) }, logarithmicGrid(10, 200, 200))(7, 0, 1000).f3
 */
export function compileBuilds(system: System, scatter: Scatter, frequencies: FrequencyGrid): BuildsKernel {
  const grid = frequencyGrid(frequencies);
  const { topology, values } = system.network;
  // Level alone: every other probe would be swept in vain.
  const flow = { ...topology, probes: {} };
  const compiled = system.compile(flow) ?? compile(flow);
  // Factors of probes went with the probes.
  const kept = Object.entries(values).filter(([name]) => compiled.slots.of.has(name));
  const nominal = valuesOf(compiled.slots, Object.fromEntries(kept));
  const places = placesOf(compiled.slots.of, scatter);
  const networks: readonly CompiledNetwork[] = [compiled.network(nominal), compiled.network(nominal, true)];
  const columns: readonly ComplexColumn[] = networks[0]!.probes.map(() => complexColumn(grid.length));
  const { density } = system.air;
  judgeReference(networks[1]!, density);
  return (seed, first, count) => {
    const uniform = uniformAt(seed);
    const [points, numbers] = [grid.length, nominal.slice()];
    refuse([
      ...unlessWhole('count', count, 0, Math.floor(MOST_LEVELS / points)),
      ...unlessWhole('first', first, 0, MOST_BUILDS - 1),
    ]);
    const levels = new Float64Array(count * points);
    const f3 = new Float64Array(count);
    for (let b = 0; b < count; b++) {
      places.forEach(({ at, factorAt }, e) => {
        numbers[at] = nominal[at]! * factorAt(uniform(first + b, e));
      });
      const [network, reference] = networks as [CompiledNetwork, CompiledNetwork];
      network.load(numbers);
      reference.load(numbers);
      network.sweep(grid, columns);
      levelColumn(grid, columns[0]!, density, 1, levels.subarray(b * points, (b + 1) * points));
      f3[b] = lastCrossing(grid, levels, b * points, referenceLevelOf(reference, density) - HALF_POWER);
    }
    return { first, count, levels, f3 };
  };
}
