import { type CompiledNetwork, compile, type Probe, type Setter } from '@airspring/core/network';
import { referenceLevelOf } from '@airspring/core/response';
import type { Variant } from '../kind/box-kind.js';
import type { Point } from '../kind/point.js';

/** A change of a reference level that is no more than rounding, dB. */
const ROUNDING = 1e-9;
/** The same where the level is read far away, since it settles within more than that: with a line behind the cone. */
const SETTLED = 0.02;

/**
 * The reference level of a network as its numbers change. It depends on few of them, often on none that the search changes:
 * those that it feels are found by moving each one, and it is worked out again only where one of these has changed.
 */
function compileReference(network: CompiledNetwork, values: Float64Array, density: number): () => number {
  const levelNow = () => {
    network.load(values);
    return referenceLevelOf(network, density);
  };
  let level = levelNow();
  const least = network.polynomials === undefined ? SETTLED : ROUNDING;
  const feels = (at: number): boolean => {
    const before = values[at]!;
    // What stands at zero may be felt elsewhere.
    if (before === 0) return true;
    values[at] = before * 1.5;
    try {
      return Math.abs(levelNow() - level) > least;
    } catch {
      return true;
    } finally {
      values[at] = before;
    }
  };
  const felt = [...values.keys()].filter(feels);
  const last = Float64Array.from(felt, (at) => values[at]!);
  return () => {
    let same = true;
    for (let i = 0; i < felt.length; i++) {
      const value = values[felt[i]!]!;
      if (value === last[i]) continue;
      last[i] = value;
      same = false;
    }
    if (!same) level = levelNow();
    return level;
  };
}

/** What is read of a load: the names of its probes. Those that several loads read have one name. */
export const loadNames = (loads: Variant['loads'] = []): readonly (readonly string[])[] =>
  loads.map(({ probes }) => probes.map((probe) => `load ${JSON.stringify(probe)}`));

/** The readings of loads, as probes. */
const loadProbes = (loads: Variant['loads'] = []): Record<string, Probe> =>
  Object.fromEntries(loadNames(loads).flatMap((names, k) => names.map((name, i) => [name, loads[k]!.probes[i]!])));

/**
 * The network of a variant with its load as further probes. It is compiled once and takes the numbers of any point;
 * `referenceLevel` is that of the point that was loaded last; it is left out where the maximum takes its place.
 */
export function compileVariant({ system, values: setAll, loads, acoustic, geometric, span, reference }: Variant) {
  const axes = [...acoustic, ...geometric, ...(span ? [span] : [])];
  const start: Point = [0.05, ...axes.map(({ from, to }) => Math.sqrt(from * to))];
  const { network: first, air } = system(start);
  const { topology } = first;
  const { coneVelocity, current } = topology.probes as Readonly<Record<'coneVelocity' | 'current', Probe>>;
  const probes = { coneVelocity, current, ...loadProbes(loads) };
  const { slots, network } = compile({ ...topology, probes });
  const values = new Float64Array(slots.size);
  const set: Setter = (name, ...numbers) => {
    const slot = slots.of.get(name);
    if (slot === undefined) return;
    // A loop takes the numbers as they were passed; `values.set` would need them in an array.
    for (let i = 0; i < numbers.length; i++) values[slot.at + i] = numbers[i]!;
  };
  setAll(start, set);
  const solver = network(values);
  return {
    /** Whether it is solved at each frequency, which takes longer than polynomials. */
    isSolved: solver.polynomials === undefined,
    density: air.density,
    probes: solver.probes,
    sweep: solver.sweep,
    load: (point: Point): void => {
      setAll(point, set);
      solver.load(values);
    },
    ...(reference !== 'maximum' && {
      referenceLevel: compileReference(network(values, true), values, air.density),
    }),
  };
}
