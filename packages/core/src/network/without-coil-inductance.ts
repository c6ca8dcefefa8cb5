import type { Element, Network, Nodes, Probe } from './element.js';

/**
 * The same network with every electrical inductor shorted: what the reference of f3 is taken from. The nodes of an
 * inductor become one; elements between nodes that have become one (a loss beside an inductor) fall away.
 *
 * @validity inductors in series with the coil; one across the source shorts it, and what is left is refused
 * @neglects every electrical inductor, also one of a filter before the coil
 * @returns the network, with the probes that still have a meaning
 * @source own (definition of the reference of f3)
 * @example withoutCoilInductance(system.network)
 */
export function withoutCoilInductance(network: Network): Network {
  const merged = new Map<string, string>();
  const now = (node: string): string => {
    const to = merged.get(node);
    return to === undefined ? node : now(to);
  };
  for (const element of network.elements) {
    if (element.kind !== 'inductor') continue;
    const [a, b] = element.nodes.map(now) as [string, string];
    if (a !== b) merged.set(a === 'ground' ? b : a, a === 'ground' ? a : b);
  }
  const both = (nodes: Nodes): Nodes => [now(nodes[0]), now(nodes[1])];
  const elements = network.elements.flatMap((element): Element[] => {
    if (element.kind === 'inductor') return [];
    if (element.kind === 'motor') return [{ ...element, electrical: both(element.electrical) }];
    if (element.kind === 'piston') return [element];
    const nodes = both(element.nodes);
    return nodes[0] === nodes[1] ? [] : [{ ...element, nodes }];
  });
  const names = new Set(elements.map((element) => element.name));
  const probes: Record<string, Probe> = {};
  for (const [name, probe] of Object.entries(network.probes)) {
    if (probe.of === 'potential') probes[name] = { ...probe, node: now(probe.node) };
    else if (names.has(probe.element)) probes[name] = probe;
  }
  return { elements, probes };
}
