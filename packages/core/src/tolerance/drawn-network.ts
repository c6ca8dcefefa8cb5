import type { System } from '../enclosure/index.js';
import { type Fault, InputError, refuse } from '../fault/index.js';
import { type CompiledTopology, compile, type Topology, valuesOf } from '../network/index.js';
import type { Distribution } from './distribution.js';

/**
 * How the numbers of a network scatter, by their names: `{ Cms: normal(0.08), vent: within(0.03) }`. An element over frequency has
 * several: `{ 'vent.length': within(0.03) }`.
 */
export type Scatter = Readonly<Record<string, Distribution>>;

/** A number that scatters: its slot, and the factor on it at a probability. */
interface Place {
  readonly at: number;
  readonly factorAt: (probability: number) => number;
}

/** Where each number of a network stands, by its name. */
function numbersOf({ elements }: Topology, of: CompiledTopology['slots']['of']): ReadonlyMap<string, number> {
  const numbers = new Map([...of].flatMap(([name, { at, count }]) => (count === 1 ? [[name, at] as const] : [])));
  for (const element of elements) {
    if (element.kind !== 'law' && element.kind !== 'line') continue;
    const { at } = of.get(element.name) ?? { at: 0 };
    element.parameters.forEach((parameter, k) => {
      numbers.set(`${element.name}.${parameter}`, at + k);
    });
  }
  return numbers;
}

/** The slots of the names that scatter, or a fault for each that the network does not have and for each that is no distribution. */
function placesOf(of: ReadonlyMap<string, number>, scatter: Scatter) {
  const faults: Fault[] = [];
  const places = Object.entries(scatter ?? {}).map(([name, distribution]): Place => {
    const path = `scatter.${name}`;
    const at = of.get(name);
    if (at === undefined) {
      const expected = `one of ${[...of.keys()].join(', ')}`;
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
    return { at: at ?? 0, factorAt };
  });
  if (places.length === 0) {
    const expected = 'a distribution for at least one number';
    faults.push({ code: 'empty', path: 'scatter', got: scatter, expected, remedy: 'Say what scatters.' });
  }
  refuse(faults);
  return places;
}

/** A network whose numbers are drawn for each build. */
export interface DrawnNetwork {
  readonly compiled: CompiledTopology;
  readonly nominal: Float64Array;
  /** The numbers of a build, in an array that the next call fills anew. `uniform` gives the random number of a build and an entry that scatters. */
  readonly draw: (uniform: (build: number, entry: number) => number, build: number) => Float64Array;
}

/** Compiles a topology of a system, with the values of the system for those of its elements and probes that it has. */
export function compileDrawn(system: System, topology: Topology, scatter: Scatter): DrawnNetwork {
  const compiled = system.compile(topology) ?? compile(topology);
  const known = Object.entries(system.network.values).filter(([name]) => compiled.slots.of.has(name));
  const nominal = valuesOf(compiled.slots, Object.fromEntries(known));
  const places = placesOf(numbersOf(topology, compiled.slots.of), scatter);
  const numbers = nominal.slice();
  const draw: DrawnNetwork['draw'] = (uniform, build) => {
    places.forEach(({ at, factorAt }, entry) => {
      numbers[at] = nominal[at]! * factorAt(uniform(build, entry));
    });
    return numbers;
  };
  return { compiled, nominal, draw };
}
