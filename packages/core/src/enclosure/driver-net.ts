import type { DriverGroup } from '../driver/index.js';
import { type Fault, isInputError } from '../fault/index.js';
import type { Element } from '../network/index.js';
import { given, optional, readFieldsInto } from '../quantity/index.js';
import { asGroup, type Drivers, mountedDriver, partOf } from './driver-parts.js';

/** One driver of a net, or a group of equal ones, and the chamber behind it. */
export interface DriverInNet {
  /** The name that its probes and limits carry: `coneVelocity left`. */
  readonly name: string;
  readonly driver: Drivers;
  /** Name of the chamber behind its cone. Leave it out if there is only one chamber. */
  readonly chamber?: string;
}

/** Drivers wired in series and in parallel, nested as you like. */
export type DriverNet =
  | DriverInNet
  | { readonly series: readonly DriverNet[] }
  | { readonly parallel: readonly DriverNet[] };

/** A driver of a net, after reading. */
export interface DriverInNetSpec {
  readonly name: string;
  readonly driver: DriverGroup;
  readonly chamber: string;
}

/** A net, after reading. */
export type DriverNetSpec =
  | DriverInNetSpec
  | { readonly series: readonly DriverNetSpec[] }
  | { readonly parallel: readonly DriverNetSpec[] };

const MOST_DRIVERS = 64;
const MOST_DEPTH = 32;
/** Greatest number of lists and drivers that are read, because a net that contains itself never ends. */
const MOST_PARTS = 4096;
const driverShape = { name: given<unknown>(), driver: given<Drivers>(), chamber: optional(given<unknown>()) };
const listShape = { series: optional(given<unknown>()), parallel: optional(given<unknown>()) };

/** Reads a net without throwing. Chambers must exist and names must differ. `undefined` when anything was refused. */
export function readDriverNet(faults: Fault[], net: unknown, chambers: readonly string[]): DriverNetSpec | undefined {
  const before = faults.length;
  const names = new Set<string>();
  let parts = 0;

  const leaf = (value: object, path: string): DriverNetSpec | undefined => {
    const read = readFieldsInto(faults, path, value, driverShape);
    if (read === undefined) return undefined;
    const { name, driver, chamber = chambers.length === 1 ? chambers[0] : undefined } = read;
    if (typeof name !== 'string' || name === '') {
      const remedy = "Name it: 'left'.";
      faults.push({ code: 'empty', path: `${path}.name`, got: name, expected: 'a text', remedy });
    } else if (names.has(name)) {
      const remedy = 'Rename one of the two.';
      faults.push({ code: 'conflict', path: `${path}.name`, got: name, expected: 'a name of its own', remedy });
    } else names.add(name);
    if (typeof chamber !== 'string' || !chambers.includes(chamber)) {
      const expected = `one of ${chambers.join(', ')}`;
      const code = chamber === undefined ? 'empty' : 'unknown-field';
      faults.push({ code, path: `${path}.chamber`, got: chamber, expected, remedy: 'Name the chamber behind it.' });
    }
    try {
      return { name: name as string, driver: asGroup(driver), chamber: chamber as string };
    } catch (error) {
      if (!isInputError(error)) throw error;
      faults.push(...error.faults.map((fault) => ({ ...fault, path: `${path}.${fault.path}` })));
      return undefined;
    }
  };

  const node = (value: unknown, path: string, depth: number): DriverNetSpec | undefined => {
    if (++parts > MOST_PARTS) {
      if (parts > MOST_PARTS + 1) return undefined;
      const expected = `at most ${MOST_PARTS} lists and drivers`;
      faults.push({ code: 'out-of-range', path, got: 'more', expected, remedy: 'Join equal drivers to a group.' });
      return undefined;
    }
    const isRecord = typeof value === 'object' && value !== null;
    const wiring = isRecord && 'series' in value ? 'series' : isRecord && 'parallel' in value ? 'parallel' : undefined;
    if (!isRecord || wiring === undefined) return leaf(value as object, path);
    const read = readFieldsInto(faults, path, value, listShape);
    const list = read?.[wiring];
    if (read?.series !== undefined && read.parallel !== undefined) {
      const remedy = 'Put one list into the other.';
      faults.push({ code: 'conflict', path, got: 'series and parallel', expected: 'one of the two', remedy });
    } else if (!Array.isArray(list) || list.length === 0) {
      const remedy = 'List what is wired.';
      faults.push({ code: 'empty', path: `${path}.${wiring}`, got: list, expected: 'a list of drivers', remedy });
    } else if (depth === MOST_DEPTH || list.length > MOST_DRIVERS) {
      const expected = `at most ${MOST_DRIVERS} drivers in a list, and lists at most ${MOST_DEPTH} deep`;
      faults.push({ code: 'out-of-range', path, got: list.length, expected, remedy: 'Join equal drivers to a group.' });
    } else {
      const parts = list.map((part, i) => node(part, `${path}.${wiring}[${i}]`, depth + 1));
      return { [wiring]: parts } as unknown as DriverNetSpec;
    }
    return undefined;
  };

  const read = node(net, 'box.drivers', 0);
  if (names.size > MOST_DRIVERS) {
    const expected = `at most ${MOST_DRIVERS} drivers`;
    const remedy = 'Join equal drivers to a group.';
    faults.push({ code: 'out-of-range', path: 'box.drivers', got: names.size, expected, remedy });
  }
  return faults.length === before ? read : undefined;
}

/**
 * All drivers of a net, from left to right.
 *
 * @validity any net that `mixedBox` has read
 * @returns each with its group, name and chamber
 * @source own (definition)
 * @example driversOf(mixedBox(input).spec.drivers).map(({ name }) => name) // ['low', 'wide']
 */
export function driversOf(net: DriverNetSpec): readonly DriverInNetSpec[] {
  if ('series' in net) return net.series.flatMap(driversOf);
  return 'parallel' in net ? net.parallel.flatMap(driversOf) : [net];
}

/** The drivers of a net as elements between two electrical nodes, each with the air of its chamber behind its cone. */
export function netElements(net: DriverNetSpec, from: string, to: string): Element[] {
  let joints = 0;
  const wired = (part: DriverNetSpec, a: string, b: string): Element[] => {
    if ('parallel' in part) return part.parallel.flatMap((one) => wired(one, a, b));
    if ('series' in part) {
      const ends = [a, ...part.series.slice(1).map(() => `joint ${++joints}`), b];
      return part.series.flatMap((one, i) => wired(one, ends[i] as string, ends[i + 1] as string));
    }
    const { name, driver, chamber } = part;
    return mountedDriver(driver.equivalent, { name, from: a, to: b, rear: partOf(chamber)('box') });
  };
  return wired(net, from, to);
}
