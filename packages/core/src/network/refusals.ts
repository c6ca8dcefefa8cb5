import { type Fault, type FaultCode, InputError, refuse } from '../fault/index.js';
import { branchLaw, type Element, isBranch, type Nodes, type Reading, type Topology } from './element.js';
import { GROUND, isListed, nodesOf } from './equations.js';
import { RADIATED_FLOW } from './reading.js';
import type { Slots } from './slots.js';

const kinds: readonly string[] = [...Object.keys(branchLaw), ...['source', 'meter', 'motor', 'piston', 'law', 'line']];

/** Refuses a topology without meaning before any arithmetic. All faults come at once, each with the name of its element or node. */
export function refuseBadTopology(topology: Topology): void {
  const { elements, probes, outlets } = topology;
  const faults: Fault[] = [];
  const add = (code: FaultCode, path: string, got: unknown, expected: string, remedy: string) =>
    faults.push({ code, path, got, expected, remedy });
  elements.forEach(({ kind, name }, i) => {
    if (kinds.includes(kind)) return;
    add(
      'unknown-field',
      `elements[${i}] ${name}`,
      kind,
      `one of ${kinds.join(', ')}`,
      `Correct the kind of '${name}'.`,
    );
  });
  refuse(faults);
  const names = new Set<string>();
  elements.forEach((element, i) => {
    const { name } = element;
    const path = `elements[${i}] ${name}`;
    if ('inReference' in element && isBranch(element) && element.stands === undefined) {
      const remedy = "Add stands: 'impedance' where the reference shorts it, 'admittance' where it leaves it out.";
      add('inconsistent', path, 'inReference: false alone', 'a statement of how it stands', remedy);
    }
    if (names.has(name)) add('conflict', path, name, 'a name of its own', 'Rename one of the two.');
    names.add(name);
    for (const [from, to] of ports(element)) {
      if (from !== to) continue;
      const remedy = `Join one end of '${name}' to another node, or remove it.`;
      add('inconsistent', path, `both ends at ${from}`, 'two nodes', remedy);
    }
  });
  for (const [i, { name, nodes }] of loops(elements)) {
    const remedy = `Put a resistance in series with '${name}', or remove it.`;
    const expected = 'a path between its nodes that is more than sources and meters';
    add('inconsistent', `elements[${i}] ${name}`, nodes.join(' to '), expected, remedy);
  }
  for (const node of loose(elements)) {
    add('inconsistent', `node ${node}`, node, 'a path to ground', `Connect '${node}' to ground through an element.`);
  }
  if (!elements.some((element) => element.kind === 'source')) {
    add('empty', 'elements', 'no source', 'one source at least', 'Add a source.');
  }
  const nodes = new Set([GROUND, ...elements.flatMap(nodesOf)]);
  const read = (path: string, reading: Reading) => {
    const target = reading.of === 'flow' ? reading.element : reading.node;
    if ((reading.of === 'flow' ? names : nodes).has(target)) return;
    const expected = `the name of ${reading.of === 'flow' ? 'an element' : 'a node'} of the network`;
    add('unknown-field', path, target, expected, 'Correct it.');
  };
  for (const [name, probe] of Object.entries(probes)) read(`probes.${name}`, probe);
  outlets.forEach(({ name, flow }, i) => read(`outlets[${i}] ${name}`, flow));
  const slotNames = [...Object.values(probes).map(({ factor }) => factor), ...outlets.map(({ delay }) => delay)];
  for (const name of slotNames) {
    if (name === undefined || !names.has(name)) continue;
    add('conflict', `values.${name}`, name, 'a name that no element has', 'Rename the factor or the delay.');
  }
  if (outlets.length > 0 && Object.hasOwn(probes, RADIATED_FLOW)) {
    const expected = 'another name: the sum of the outlets has this one';
    add('conflict', `probes.${RADIATED_FLOW}`, RADIATED_FLOW, expected, 'Remove the probe, or the outlets.');
  }
  refuse(faults);
}

/** Refuses values that are not a number, are below zero, or become infinite in the equations. */
export function refuseBadNumbers(
  { elements, probes, outlets }: Topology,
  { of }: Slots,
  values: Float64Array,
  numbers: Float64Array,
): void {
  let good = true;
  for (let i = 0; i < numbers.length; i++) good &&= numbers[i]! >= 0 && numbers[i]! < Infinity;
  for (let i = 0; i < values.length; i++) good &&= !Number.isNaN(values[i]);
  if (good) return;
  const faults: Fault[] = [];
  elements.forEach((element, i) => {
    const slot = of.get(element.name);
    if (slot === undefined) return;
    const path = `elements[${i}] ${element.name}`;
    if (isListed(element)) {
      for (let k = 0; k < slot.count; k++) {
        const got = values[slot.at + k]!;
        if (Number.isFinite(got)) continue;
        faults.push({ code: 'not-finite', path, got, expected: 'a finite number', remedy: 'Correct the parameter.' });
      }
      return;
    }
    const [got, number] = [values[slot.at]!, numbers[i]!];
    if (number >= 0 && number < Infinity) return;
    const code = Number.isFinite(got) ? 'not-positive' : 'not-finite';
    const remedy =
      got < 0 ? 'Correct its sign.' : `Leave '${element.name}' out, or set "stands" so that it may be zero.`;
    faults.push({ code, path, got, expected: 'a value above zero', remedy });
  });
  for (const name of [...Object.values(probes).map(({ factor }) => factor), ...outlets.map(({ delay }) => delay)]) {
    const got = name === undefined ? 0 : values[of.get(name)?.at ?? -1]!;
    if (Number.isFinite(got)) continue;
    faults.push({
      code: 'not-finite',
      path: `values.${name}`,
      got,
      expected: 'a finite number',
      remedy: 'Correct it.',
    });
  }
  refuse(faults);
}

/** The fault of a resonance without any loss, where there is no finite answer. */
export const undamped = (frequency: number): InputError =>
  new InputError([
    {
      code: 'inconsistent',
      path: 'network',
      got: frequency,
      expected: 'a network that is damped at every frequency of the sweep',
      remedy: `Add a resistance: nothing damps the resonance at ${frequency} Hz.`,
    },
  ]);

/** The fault of a missing probe. */
export function missingProbe(name: string): InputError {
  const expected = `a probe '${name}' in the network of the system`;
  const remedy = 'Add the probe to the network.';
  return new InputError([{ code: 'empty', path: `network.probes.${name}`, got: undefined, expected, remedy }]);
}

/** The fault of equations without a solution, such as a source across motors alone, or motors that fight each other. */
export function contradiction({ elements }: Topology): InputError {
  const held = elements.filter(({ kind }) => kind === 'source' || kind === 'meter' || kind === 'motor');
  const got = `${held.map(({ name }) => `'${name}'`).join(', ')} against each other`;
  const remedy = 'Put a resistance in series with one of them, and a mass or a damper at each moving node.';
  const expected = 'equations with one solution';
  return new InputError([{ code: 'inconsistent', path: 'elements', got, expected, remedy }]);
}

/** The sides of an element, each of which needs two nodes. A cone has the same air before and behind it where there is no box. */
const ports = (element: Element): readonly Nodes[] => {
  if (element.kind === 'motor') return [element.electrical, element.mechanical];
  return [element.kind === 'piston' ? element.mechanical : element.nodes];
};

/** Sources and meters that close a loop of nothing else: their potentials say the same twice, or contradict. */
function loops(elements: readonly Element[]): (readonly [index: number, element: Element & { nodes: Nodes }])[] {
  const joined = new Map<string, string>();
  const root = (node: string): string => {
    const to = joined.get(node);
    return to === undefined ? node : root(to);
  };
  return [...elements.entries()].flatMap(([i, element]) => {
    if (element.kind !== 'source' && element.kind !== 'meter') return [];
    const [from, to] = element.nodes.map(root) as [string, string];
    if (from !== to) joined.set(from, to);
    return from === to && element.nodes[0] !== element.nodes[1] ? [[i, element] as const] : [];
  });
}

/** Nodes without a path to ground. */
function loose(elements: readonly Element[]): string[] {
  const held = new Set([GROUND]);
  // A motor or piston joins domains, but each side needs a ground of its own: only differences are coupled.
  const pairs = elements.flatMap((element): Nodes[] =>
    element.kind === 'piston' ? [...ports(element), [element.front, element.rear]] : [...ports(element)],
  );
  for (let before = 0; before < held.size; ) {
    before = held.size;
    for (const [from, to] of pairs) {
      if (held.has(from)) held.add(to);
      else if (held.has(to)) held.add(from);
    }
  }
  return [...new Set(elements.flatMap(nodesOf))].filter((node) => !held.has(node));
}
