import { type Fault, type FaultCode, InputError, refuse } from '../fault/index.js';
import { branchLaw, type Element, isBranch, type Network, type Nodes } from './element.js';
import { GROUND, nodesOf, symbolValue } from './equations.js';

const kinds: readonly string[] = [
  ...Object.keys(branchLaw),
  ...['source', 'meter', 'motor', 'piston', 'admittance', 'twoPort'],
];

/** Refuses what has no meaning before any arithmetic, with every fault at once, each with the name of what it is about. */
export function refuseBadNetwork({ elements, probes }: Network): void {
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
    const value = symbolValue(element);
    const got = isBranch(element) ? element.value : value;
    if (!(value > 0 && value < Infinity)) {
      const code = Number.isFinite(got) ? 'not-positive' : 'not-finite';
      add(code, path, got, 'a value above zero', `Leave '${name}' out where it is nothing.`);
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
    const expected = 'another way between its nodes than sources and meters alone';
    add('inconsistent', `elements[${i}] ${name}`, nodes.join(' to '), expected, remedy);
  }
  for (const node of loose(elements)) {
    add('inconsistent', `node ${node}`, node, 'a way to ground', `Connect '${node}' to ground by an element.`);
  }
  if (!elements.some((element) => element.kind === 'source')) {
    add('empty', 'elements', 'no source', 'one source at least', 'Add a source.');
  }
  const nodes = new Set(elements.flatMap(nodesOf));
  for (const [name, probe] of Object.entries(probes)) {
    const path = `probes.${name}`;
    if (!Number.isFinite(probe.factor ?? 1)) {
      add('not-finite', `${path}.factor`, probe.factor, 'a number', 'Correct it.');
    }
    const target = probe.of === 'flow' ? probe.element : probe.node;
    if (!(probe.of === 'flow' ? names : nodes).has(target)) {
      add('unknown-field', path, target, `the name of ${probe.of === 'flow' ? 'an element' : 'a node'}`, 'Correct it.');
    }
  }
  refuse(faults);
}

/** A fault that names the probe that is not there. */
export function missingProbe(name: string): InputError {
  const expected = `a probe '${name}' in the network of the system`;
  const remedy = 'Add the probe to the network.';
  return new InputError([{ code: 'empty', path: `network.probes.${name}`, got: undefined, expected, remedy }]);
}

/** Equations that no values of the elements can solve: a source across nothing but motors, motors that fight each other. */
export function contradiction({ elements }: Network): InputError {
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

/** Nodes that no element holds against ground. */
function loose(elements: readonly Element[]): string[] {
  const held = new Set([GROUND]);
  // A motor or piston joins domains, but each side needs a ground of its own: only differences are coupled.
  const pairs = elements.flatMap((element): Nodes[] =>
    element.kind === 'piston' ? [...ports(element), [element.front, element.rear]] : [...ports(element)],
  );
  for (let before = 0; before < held.size; ) {
    before = held.size;
    for (const pair of pairs) if (pair.some((node) => held.has(node))) for (const node of pair) held.add(node);
  }
  return [...new Set(elements.flatMap(nodesOf))].filter((node) => !held.has(node));
}
