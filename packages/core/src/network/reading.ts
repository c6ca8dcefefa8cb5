import { branchLaw, isBranch, type Network, type Probe } from './element.js';
import type { Equations } from './equations.js';

/** Where a probe reads: factor × symbol × s^power × (unknown plus − unknown minus); −1 is ground, or no symbol. */
export interface Reading {
  readonly plus: number;
  readonly minus: number;
  readonly symbol: number;
  readonly power: -1 | 0 | 1;
  readonly factor: number;
}

/** Turns a probe into what it reads of the unknowns. */
export function readingOf(network: Network, { nodes, flowUnknown }: Equations, probe: Probe): Reading {
  const factor = probe.factor ?? 1;
  const at = (node: string | undefined) => (node === undefined ? -1 : nodes.indexOf(node));
  if (probe.of === 'potential') return { plus: at(probe.node), minus: -1, symbol: -1, power: 0, factor };
  const symbol = network.elements.findIndex((element) => element.name === probe.element);
  const element = network.elements[symbol];
  const own = flowUnknown[symbol] ?? -1;
  if (own >= 0 || element === undefined) return { plus: own, minus: -1, symbol: -1, power: 0, factor };
  const [from, to] = element.kind === 'piston' ? element.mechanical : 'nodes' in element ? element.nodes : [];
  const power = isBranch(element) ? branchLaw[element.kind][1] : 0;
  return { plus: at(from), minus: at(to), symbol, power, factor };
}
