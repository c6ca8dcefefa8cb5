/**
 * Elements of three domains, in one nodal description. A node carries a potential, an element a flow:
 *
 * | domain | potential of a node | flow through an element | `ground` |
 * | --- | --- | --- | --- |
 * | electrical | voltage, V | current, A | the other terminal |
 * | mechanical | velocity, m/s | force, N | the frame, at rest |
 * | acoustical | pressure, Pa | volume flow, m³/s | the air outside, at rest |
 *
 * With velocity as the mechanical potential (the mobility analogy) parts that move together share a node, a motor is an
 * ideal transformer and a piston a gyrator, so that no domain has to be turned into another (@source beranek2012 ch. 3).
 */
export type Element = Branch | Source | Motor | Piston | Admittance;

/** A pair of nodes; flow is counted from the first to the second. */
export type Nodes = readonly [from: string, to: string];

/** Two-terminal elements with one constant value. */
export type BranchKind =
  | 'resistor'
  | 'inductor'
  | 'capacitor'
  | 'mass'
  | 'spring'
  | 'damper'
  | 'acousticMass'
  | 'acousticCompliance'
  | 'acousticResistance';

export interface Branch {
  readonly kind: BranchKind;
  readonly name: string;
  readonly nodes: Nodes;
  /** Ω, H, F · kg, m/N, N·s/m · kg/m⁴, m³/Pa, Pa·s/m³. */
  readonly value: number;
}

/** The drive: 1 V rms between its nodes. All columns of a sweep are per volt of it. Its flow is the current it delivers. */
export interface Source {
  readonly kind: 'source';
  readonly name: string;
  readonly nodes: Nodes;
}

/** A voice coil in its gap: voltage = Bl × velocity, force = Bl × current. Its flow is the current. */
export interface Motor {
  readonly kind: 'motor';
  readonly name: string;
  readonly electrical: Nodes;
  readonly mechanical: Nodes;
  readonly Bl: number;
}

/** A cone: moving by its mechanical node it pushes air into `front` and draws it from `rear`. Its flow is Sd × velocity. */
export interface Piston {
  readonly kind: 'piston';
  readonly name: string;
  readonly mechanical: Nodes;
  readonly front: string;
  readonly rear: string;
  readonly Sd: number;
}

/** A two-terminal element given by its admittance at each frequency: radiation, eddy currents, creep, fibre. */
export interface Admittance {
  readonly kind: 'admittance';
  readonly name: string;
  readonly nodes: Nodes;
  /** Fills real and imaginary part for each frequency in Hz. */
  readonly admittance: (frequencies: Float64Array, re: Float64Array, im: Float64Array) => void;
}

/** What is read off a solved network. */
export type Probe =
  | { readonly of: 'potential'; readonly node: string; readonly factor?: number }
  | { readonly of: 'flow'; readonly element: string; readonly factor?: number };

/** Any topology: a list of elements, and named probes. */
export interface Network {
  readonly elements: readonly Element[];
  readonly probes: Readonly<Record<string, Probe>>;
}

/** Admittance of a branch = value^exponent × s^power. */
export const branchLaw: Readonly<Record<BranchKind, readonly [exponent: 1 | -1, power: -1 | 0 | 1]>> = {
  resistor: [-1, 0],
  inductor: [-1, -1],
  capacitor: [1, 1],
  mass: [1, 1],
  spring: [-1, -1],
  damper: [1, 0],
  acousticMass: [-1, -1],
  acousticCompliance: [1, 1],
  acousticResistance: [-1, 0],
};

export const isBranch = (element: Element): element is Branch => Object.hasOwn(branchLaw, element.kind);

/** Makes a branch: `branch('mass', 'Mms', ['cone', 'ground'], 0.06)`. */
export const branch = (kind: BranchKind, name: string, nodes: Nodes, value: number): Branch => ({
  kind,
  name,
  nodes,
  value,
});
