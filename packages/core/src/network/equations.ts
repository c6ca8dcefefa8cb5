import { branchLaw, type Element, isBranch, type Network, type Nodes } from './element.js';

/** Which column of an element given over frequency: its admittance, or a corner of its chain matrix. */
export type Listed = 'Y' | 'A' | 'B' | 'C' | 'D';

/** One entry of the nodal matrix: sign × (value of the symbol) × s^power; symbol −1 stands for 1. */
export interface Stamp {
  readonly row: number;
  readonly column: number;
  readonly sign: 1 | -1;
  readonly symbol: number;
  readonly power: -1 | 0 | 1;
  /** Instead of a value: a column of the element. */
  readonly listed?: Listed;
}

/** The nodal equations of a network: unknowns are the node potentials, then the flows of sources, meters, motors and lines. */
export interface Equations {
  readonly size: number;
  readonly nodes: readonly string[];
  readonly stamps: readonly Stamp[];
  /** Rows whose right side is the unit drive. */
  readonly driven: readonly number[];
  /** For each element the unknown that is its own flow, or −1. */
  readonly flowUnknown: readonly number[];
}

export const GROUND = 'ground';

/** Every node that an element touches. */
export const nodesOf = (element: Element): readonly string[] => {
  if (element.kind === 'motor') return [...element.electrical, ...element.mechanical];
  if (element.kind === 'piston') return [...element.mechanical, element.front, element.rear];
  return element.nodes;
};

/** Whether an element is given over frequency instead of by one value. */
export const isListed = (element: Element): boolean => element.kind === 'admittance' || element.kind === 'twoPort';

/** The number that stands for an element in the equations; its admittance without the power of s. */
export function symbolValue(element: Element): number {
  if (element.kind === 'motor') return element.Bl;
  if (element.kind === 'piston') return element.Sd;
  if (isBranch(element)) return branchLaw[element.kind][0] === 1 ? element.value : 1 / element.value;
  return 1;
}

/** Writes down the nodal equations. Symbol i is element i; nothing numeric is looked at. */
export function equations(network: Network): Equations {
  const { elements } = network;
  const nodes = [...new Set(elements.flatMap(nodesOf))].filter((node) => node !== GROUND);
  const index = new Map(nodes.map((node, i) => [node, i]));
  const at = (node: string) => index.get(node) ?? -1;
  const stamps: Stamp[] = [];
  const driven: number[] = [];
  let size = nodes.length;

  const put = (row: number, column: number, sign: 1 | -1, symbol: number, power: -1 | 0 | 1 = 0, listed?: Listed) => {
    if (row >= 0 && column >= 0) stamps.push({ row, column, sign, symbol, power, ...(listed && { listed }) });
  };
  /** Rows `nodes` gain a flow that is sign × symbol × unknown, leaving the first node and entering the second. */
  const flow = (
    [from, to]: Nodes,
    column: number,
    sign: 1 | -1,
    symbol: number,
    power: -1 | 0 | 1 = 0,
    listed?: Listed,
  ) => {
    put(at(from), column, sign, symbol, power, listed);
    put(at(to), column, sign === 1 ? -1 : 1, symbol, power, listed);
  };

  const flowUnknown = elements.map((element, symbol) => {
    if (element.kind === 'piston') {
      for (const [node, sign] of [
        [element.mechanical[0], 1],
        [element.mechanical[1], -1],
      ] as const) {
        flow([element.rear, element.front], at(node), sign, symbol);
        put(at(node), at(element.front), sign, symbol);
        put(at(node), at(element.rear), sign === 1 ? -1 : 1, symbol);
      }
      return -1;
    }
    if (element.kind === 'source' || element.kind === 'meter' || element.kind === 'motor') {
      const own = size++;
      const [plus, minus] = element.kind === 'motor' ? element.electrical : element.nodes;
      put(own, at(plus), 1, -1);
      put(own, at(minus), -1, -1);
      flow([plus, minus], own, element.kind === 'source' ? -1 : 1, -1); // a source delivers
      if (element.kind === 'source') driven.push(own);
      if (element.kind === 'motor') {
        put(own, at(element.mechanical[0]), -1, symbol);
        put(own, at(element.mechanical[1]), 1, symbol);
        flow(element.mechanical, own, -1, symbol);
      }
      return own;
    }
    if (element.kind === 'twoPort') {
      // p₁ = A p₂ + B U₂; U₁ = C p₂ + D U₂ leaves the near node, U₂ enters the far one.
      const own = size++;
      const [near, far] = element.nodes.map(at) as [number, number];
      put(own, near, 1, -1);
      put(own, far, -1, symbol, 0, 'A');
      put(own, own, -1, symbol, 0, 'B');
      put(near, far, 1, symbol, 0, 'C');
      put(near, own, 1, symbol, 0, 'D');
      put(far, own, -1, -1);
      return own;
    }
    const power = isBranch(element) ? branchLaw[element.kind][1] : 0;
    const listed = isBranch(element) ? undefined : 'Y';
    flow(element.nodes, at(element.nodes[0]), 1, symbol, power, listed);
    flow(element.nodes, at(element.nodes[1]), -1, symbol, power, listed);
    return -1;
  });
  return { size, nodes, stamps, driven, flowUnknown };
}
