import type { Element, Reading, Topology } from '../network/index.js';

const GROUND = 'ground';

/** A flow out of the system, as the topology says. */
export interface Exit {
  readonly name: string;
  readonly flow: Reading;
}

type Pair = readonly [string, string];
const isAir = ({ kind }: Element) => kind.startsWith('acoustic');
const joint = (element: Element): Pair | undefined =>
  isAir(element) || element.kind === 'law' || element.kind === 'line' || element.kind === 'meter'
    ? (element as { nodes: Pair }).nodes
    : undefined;

/** All nodes that pairs connect to the given ones; ground connects nothing. */
export function joined(start: readonly string[], pairs: readonly Pair[]): Set<string> {
  const found = new Set(start.filter((node) => node !== GROUND));
  for (let grown = true; grown; ) {
    grown = false;
    for (const [a, b] of pairs) {
      for (const [one, other] of [
        [a, b],
        [b, a],
      ] as const) {
        if (!found.has(one) || found.has(other) || other === GROUND) continue;
        found.add(other);
        grown = true;
      }
    }
  }
  return found;
}

/** Nodes of air that a cone can push through openings. Compliances are cut, since they only store air. */
export function drivenAir({ elements }: Topology, stores: ReadonlySet<string>): Set<string> {
  const faces = elements.flatMap((element) => (element.kind === 'piston' ? [element.front, element.rear] : []));
  const pairs = elements.flatMap((element) => {
    const nodes = stores.has(element.name) ? undefined : joint(element);
    return nodes === undefined ? [] : [nodes];
  });
  return joined(faces, pairs);
}

/**
 * Every flow into the air outside, with its sign: from the fronts of cones, and from openings of air that a cone pushes. A
 * resistance or a mass that only a compliance feeds (fibre, a resonator) takes flow to ground but lets none out.
 */
export function exitsOf(topology: Topology, stores: ReadonlySet<string>): readonly Exit[] {
  const driven = drivenAir(topology, stores);
  return topology.elements.flatMap((element): Exit[] => {
    const { name } = element;
    const out = (flow: Reading) => [{ name, flow }];
    if (element.kind === 'piston') {
      if (element.front === element.rear) return [];
      if (element.front === GROUND) return out({ of: 'flow', element: name });
      return element.rear === GROUND ? out({ of: 'flow', element: name, sign: -1 }) : [];
    }
    const nodes = joint(element);
    if (nodes === undefined || stores.has(name)) return [];
    const [from, to] = nodes;
    if (to === GROUND && driven.has(from)) return out({ of: 'flow', element: name });
    // The flow of a line is the flow at its far end.
    if (from === GROUND && driven.has(to))
      return element.kind === 'line' ? [] : out({ of: 'flow', element: name, sign: -1 });
    return [];
  });
}

/** The compliances between driven air and the rest, which take air in. Flow is counted inwards. */
export function storesOf(topology: Topology, stores: ReadonlySet<string>): readonly Exit[] {
  const driven = drivenAir(topology, stores);
  return topology.elements.flatMap((element): Exit[] => {
    const nodes = stores.has(element.name) ? joint(element) : undefined;
    if (nodes === undefined) return [];
    const [from, to] = [driven.has(nodes[0]), driven.has(nodes[1])];
    if (from === to) return [];
    const { name } = element;
    return [{ name, flow: { of: 'flow', element: name, ...(to && { sign: -1 as const }) } }];
  });
}
