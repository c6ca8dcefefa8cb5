import { type Branch, type Element, isBranch, type Law, type Nodes, type Topology } from './element.js';
import { type Form, formOf, type Slots } from './slots.js';

/** Which column of an element given over frequency: the one of a law, or a corner of the chain matrix of a line. */
export type Listed = 'law' | 'A' | 'B' | 'C' | 'D';

/** Unknowns or equations, each with a sign; ground is left out. */
export type Signed = readonly (readonly [index: number, sign: 1 | -1])[];

/** What one law puts into the equations: the sum of `rows` gains value × s^power × the sum of `columns`. */
export interface Coupling {
  readonly rows: Signed;
  readonly columns: Signed;
  /** Place of the element whose value it is; −1 stands for 1. */
  readonly symbol: number;
  readonly power: -1 | 0 | 1;
  /** Instead of a value: a column of the element. */
  readonly listed: Listed | undefined;
}

/** One entry of the matrix: sign × (value of the symbol) × s^power. */
export interface Stamp extends Omit<Coupling, 'rows' | 'columns'> {
  readonly row: number;
  readonly column: number;
  readonly sign: 1 | -1;
}

/** The equations of a network: unknowns are the node potentials, then the flows of sources, meters, motors and lines, and of branches in a row. */
export interface Equations {
  readonly size: number;
  readonly nodes: readonly string[];
  readonly couplings: readonly Coupling[];
  readonly stamps: readonly Stamp[];
  /** Rows whose right side is the unit drive. */
  readonly driven: readonly number[];
  /** For each element the unknown that is its own flow, or −1. */
  readonly flowUnknown: readonly number[];
  /** For each element with which power of its value, and of s, it stands. */
  readonly forms: readonly Form[];
}

export const GROUND = 'ground';

/** All nodes of an element. */
export const nodesOf = (element: Element): readonly string[] => {
  if (element.kind === 'motor') return [...element.electrical, ...element.mechanical];
  if (element.kind === 'piston') return [...element.mechanical, element.front, element.rear];
  return element.nodes;
};

/** Whether an element is given over frequency instead of by one value. */
export const isListed = (element: Element): boolean => element.kind === 'law' || element.kind === 'line';

/**
 * Prepares the numbers with which elements stand: the value of each or its inverse. In the reference, what is left out of it
 * is 0. Elements given over frequency stand with 1 or 0. Fills `out`; allocates nothing.
 */
export function compileNumbers(
  { elements }: Topology,
  { of }: Slots,
  { forms }: Equations,
  inReference = false,
): (values: Float64Array, out: Float64Array) => void {
  const isLeftOut = (element: Element) => inReference && 'inReference' in element && element.inReference === false;
  /** Slot of each element; −1 stands for 1, −2 for 0. */
  const slots = Int32Array.from(elements, (element) => {
    if (isLeftOut(element)) return -2;
    return isListed(element) ? -1 : (of.get(element.name)?.at ?? -1);
  });
  const exponents = Int8Array.from(forms, ({ exponent }) => exponent);
  return (values, out) => {
    for (let i = 0; i < slots.length; i++) {
      const slot = slots[i]!;
      const value = slot < 0 ? slot + 2 : values[slot]!;
      out[i] = exponents[i]! > 0 ? value : slot === -2 ? 0 : 1 / value;
    }
  };
}

/** A branch, or several side by side between the same two nodes. */
export type Bundle = readonly Branch[];

/**
 * Writes down the equations. Symbol i is element i; no number is looked at. What stands with its impedance gets its flow as
 * an unknown. Where nothing is said, that is what `bundles` names; several side by side get one flow together.
 */
export function equations({ elements }: Topology, bundles: readonly Bundle[] = []): Equations {
  const nodes = [...new Set(elements.flatMap(nodesOf))].filter((node) => node !== GROUND);
  const index = new Map(nodes.map((node, i) => [node, i]));
  const couplings: Coupling[] = [];
  const driven: number[] = [];
  let size = nodes.length;

  const across = ([from, to]: Nodes): Signed => {
    const [a, b] = [index.get(from), index.get(to)];
    if (a === undefined) return b === undefined ? [] : [[b, -1]];
    const first = [a, 1] as const;
    return b === undefined ? [first] : [first, [b, -1]];
  };
  const stamps: Stamp[] = [];
  const couple = (rows: Signed, columns: Signed, symbol = -1, power: -1 | 0 | 1 = 0, listed?: Listed) => {
    couplings.push({ rows, columns, symbol, power, listed });
    for (const [row, a] of rows) {
      for (const [column, b] of columns) stamps.push({ row, column, sign: a === b ? 1 : -1, symbol, power, listed });
    }
  };
  const minus = (signed: Signed): Signed => signed.map(([at, sign]) => [at, sign === 1 ? -1 : 1]);

  const bundleOf = new Map(bundles.flatMap((bundle) => bundle.map((branch) => [branch as Element, bundle] as const)));
  const flowOf = new Map<Bundle, number>();
  /** The equation of the flow of several branches side by side, made with the first of them; counted in its direction. */
  const bundleRows = (element: Element & { nodes: Nodes }): Signed | undefined => {
    const bundle = bundleOf.get(element);
    if (bundle === undefined) return undefined;
    const { nodes } = bundle[0] as Branch;
    const flow = flowOf.get(bundle) ?? size++;
    if (!flowOf.has(bundle)) {
      couple([[flow, 1]], [[flow, -1]]);
      couple(across(nodes), [[flow, 1]]);
    }
    flowOf.set(bundle, flow);
    return [[flow, nodes[0] === element.nodes[0] ? 1 : -1]];
  };
  /** Whether an element stands with its impedance and has a flow of its own. */
  const asImpedance = (element: Branch | Law): boolean =>
    element.stands === undefined ? bundleOf.get(element)?.length === 1 : element.stands === 'impedance';
  const forms = elements.map((element) => formOf(element, isBranch(element) && asImpedance(element)));
  const flowUnknown = elements.map((element, symbol) => {
    if (element.kind === 'piston') {
      const [cone, air] = [across(element.mechanical), across([element.rear, element.front])];
      couple(air, cone, symbol);
      couple(cone, minus(air), symbol);
      return -1;
    }
    const { power } = forms[symbol] as Form;
    const listed = element.kind === 'law' ? ('law' as const) : undefined;
    if ((element.kind === 'law' || isBranch(element)) && !asImpedance(element)) {
      couple(bundleRows(element) ?? across(element.nodes), across(element.nodes), symbol, power, listed);
      return -1;
    }
    const flow = size++;
    const own: Signed = [[flow, 1]];
    if (element.kind === 'line') {
      // p₁ = A p₂ + B U₂; U₁ = C p₂ + D U₂ leaves the near node, U₂ enters the far one.
      const [near, far] = [across([element.nodes[0], GROUND]), across([element.nodes[1], GROUND])];
      couple(own, near);
      couple(minus(own), far, symbol, 0, 'A');
      couple(minus(own), own, symbol, 0, 'B');
      couple(near, far, symbol, 0, 'C');
      couple(near, own, symbol, 0, 'D');
      couple(far, minus(own));
      return flow;
    }
    const nodesAcross = across(element.kind === 'motor' ? element.electrical : element.nodes);
    couple(own, nodesAcross);
    couple(nodesAcross, element.kind === 'source' ? minus(own) : own); // a source delivers
    if (element.kind === 'source') driven.push(flow);
    else if (element.kind === 'motor') {
      const cone = across(element.mechanical);
      couple(own, minus(cone), symbol);
      couple(minus(cone), own, symbol);
    } else if (element.kind !== 'meter') couple(own, minus(own), symbol, power, listed);
    return flow;
  });
  return { size, nodes, couplings, stamps, driven, flowUnknown, forms };
}
