import { coilOf as coilOfDriver } from '../driver/coil-of.js';
import type { CoilBranch, Driver } from '../driver/index.js';
import type { System } from '../enclosure/index.js';
import type { Element, Motor, Topology } from '../network/index.js';
import { numberOf } from './family-trial.js';

const GROUND = 'ground';

/** The node of the cone that a motor moves. */
export const coneNode = ({ mechanical: [a, b] }: Motor): string => (a === GROUND ? b : a);

export const motorsOf = ({ elements }: Topology): readonly Motor[] =>
  elements.filter((element): element is Motor => element.kind === 'motor');

const driverFields = ['Sd', 'Mms', 'Cms', 'Rms', 'Re', 'Bl'] as const;
const isDriver = (record: Record<string, unknown>): boolean =>
  driverFields.every((field) => typeof record[field] === 'number');

/** The drivers of a spec: of a group the one that stands for all, with the name of the record that holds it. */
export function driversIn(
  spec: unknown,
): readonly { readonly name: unknown; readonly chamber: unknown; readonly driver: Driver }[] {
  const found: { name: unknown; chamber: unknown; driver: Driver }[] = [];
  const walk = (value: unknown, name: unknown, chamber: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    const record = value as Record<string, unknown>;
    if (isDriver(record)) found.push({ name, chamber, driver: record as unknown as Driver });
    else if ('equivalent' in record) walk(record.equivalent, name, chamber);
    else for (const inner of Object.values(record)) walk(inner, record.name ?? name, record.chamber ?? chamber);
  };
  walk(spec, undefined, undefined);
  return found;
}

/** The spec without the models of coils and suspensions in its drivers. */
export function withoutModels<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(withoutModels) as T;
  const record = value as Record<string, unknown>;
  const kept = Object.entries(record).filter(
    ([name]) => !isDriver(record) || (name !== 'coil' && name !== 'suspension'),
  );
  return Object.fromEntries(kept.map(([name, one]) => [name, withoutModels(one)])) as T;
}

/** Which driver moves by which motor: by the name of the probe of its cone, else in the order of both. */
export function driverOfMotor(
  { network: { topology }, spec }: System,
  handedIn: readonly Driver[] | undefined,
): readonly (Driver | undefined)[] {
  const motors = motorsOf(topology);
  const found = driversIn(spec);
  return motors.map((motor, i) => {
    if (handedIn !== undefined) return handedIn[i];
    const probe = Object.entries(topology.probes).find(
      ([name, read]) => name.startsWith('coneVelocity ') && read.of === 'potential' && read.node === coneNode(motor),
    );
    const own = probe && found.find(({ name }) => probe[0] === `coneVelocity ${name}`);
    return (own ?? (motors.length === found.length ? found[i] : undefined))?.driver;
  });
}

/** The numbers of a driver that stand in a network. R2 and L2 are what stands side by side in its coil. */
export type DriverNumber = (typeof driverFields)[number] | 'Le' | 'R2' | 'L2';

/** The same numbers as the driver has them. */
export function numbersOf(driver: Driver): Readonly<Record<DriverNumber, number>> {
  const { Sd, Mms, Cms, Rms, Re, Bl } = driver;
  const { circuit = [], parameters = {} } = coilOfDriver(driver) ?? {};
  const place = ({ joints }: CoilBranch) => [...joints].sort().join();
  const sum = (kind: CoilBranch['kind'], beside: boolean) =>
    circuit
      .filter(
        (one) => one.kind === kind && circuit.some((other) => other !== one && place(other) === place(one)) === beside,
      )
      .reduce((total, { parameter }) => total + (parameters[parameter] ?? Number.NaN), 0);
  return {
    ...{ Sd, Mms, Cms, Rms, Bl },
    Re: Re + sum('resistor', false),
    Le: sum('inductor', false),
    R2: sum('resistor', true),
    L2: sum('inductor', true),
  };
}

/** The numbers that a motor and what hangs on it have in the network, by the fields of a driver. */
export function numbersAt(system: System, motor: Motor): Readonly<Record<DriverNumber, number>> {
  const { elements } = system.network.topology;
  const cone = coneNode(motor);
  const value = ({ name }: Element) => numberOf(system, name);
  /** Of an element over frequency the first number: that of a suspension is Cms. */
  const first = ({ name }: Element) => [system.network.values[name]].flat()[0] as number;
  const toFrame = (kind: Element['kind']) =>
    elements.filter(
      (one) => one.kind === kind && 'nodes' in one && one.nodes.includes(cone) && one.nodes.includes(GROUND),
    );
  const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
  const pistons = elements.filter((one) => one.kind === 'piston' && one.mechanical.includes(cone));
  const coil = coilParts(system, motor);
  const alone = (kind: Element['kind']) =>
    coil.filter((part) => part.length === 1 && part[0]?.kind === kind).map(([one]) => value(one as Element));
  const beside = (kind: Element['kind']) =>
    coil.filter((part) => part.length > 1).flatMap((part) => part.filter((one) => one.kind === kind).map(value));
  return {
    Bl: value(motor),
    Sd: pistons.length === 0 ? Number.NaN : Math.max(...pistons.map(value)),
    Mms: sum(toFrame('mass').map(value)),
    Rms: sum(toFrame('damper').map(value)),
    Cms: 1 / sum([...toFrame('spring'), ...toFrame('law')].map((one) => 1 / first(one))),
    Re: sum(alone('resistor')),
    Le: sum(alone('inductor')),
    R2: sum(beside('resistor')),
    L2: sum(beside('inductor')),
  };
}

/** What stands between the source and the terminals, Ω. */
export function sourceResistance(system: System): number {
  const { elements, probes } = system.network.topology;
  const source = elements.find(({ kind }) => kind === 'source');
  const terminals = probes.terminalVoltage;
  if (source?.kind !== 'source' || terminals?.of !== 'potential') return Number.NaN;
  if (source.nodes.includes(terminals.node)) return 0;
  const between = elements.filter(
    (one) => one.kind === 'resistor' && one.nodes.includes(terminals.node) && one.nodes.includes(source.nodes[0]),
  );
  return between.reduce((sum, { name }) => sum + numberOf(system, name), 0);
}

/** The coil of a motor: what is in series with it up to the terminals, and what is beside that. */
function coilParts({ network: { topology } }: System, motor: Motor): readonly (readonly Element[])[] {
  const stops = Object.entries(topology.probes).flatMap(([name, read]) =>
    name.startsWith('terminalVoltage') && read.of === 'potential' ? [read.node] : [],
  );
  return inSeries(topology.elements, motor, stops);
}

/** The names of all elements of a coil. */
export const coilOf = (system: System, motor: Motor): readonly string[] =>
  coilParts(system, motor).flatMap((part) => part.map(({ name }) => name));

/** The elements that carry the current of a motor. */
export const carriersOf = (system: System, motor: Motor): readonly string[] => [
  motor.name,
  ...coilParts(system, motor).flatMap((part) => (part.length === 1 ? part.map(({ name }) => name) : [])),
];

/** What is in series with a motor, up to the terminals or to a fork: each a list of what is side by side. */
function inSeries(
  elements: readonly Element[],
  motor: Motor,
  stops: readonly string[],
): readonly (readonly Element[])[] {
  const walk = (start: string, end: string): Element[][] => {
    const parts: Element[][] = [];
    const seen = new Set<Element>([motor]);
    for (let at = start; at !== GROUND && !stops.includes(at) && at !== end; ) {
      const next = elements.filter((one) => !seen.has(one) && portsOf(one).includes(at));
      const far = new Set(next.flatMap((one) => portsOf(one).filter((node) => node !== at)));
      if (next.length === 0 || far.size !== 1 || next.some(({ kind }) => kind === 'motor' || kind === 'source')) break;
      for (const one of next) seen.add(one);
      parts.push(next);
      at = [...far][0] as string;
    }
    return parts;
  };
  const [a, b] = motor.electrical;
  const before = walk(a, b);
  return before.some((part) => part.some(({ kind }) => kind === 'resistor')) ? before : [...before, ...walk(b, a)];
}

const portsOf = (element: Element): readonly string[] =>
  element.kind === 'motor' ? element.electrical : 'nodes' in element ? element.nodes : [];
