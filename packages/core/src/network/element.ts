import type { ComplexColumn } from '../numeric/index.js';

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
export type Element = Branch | Source | Meter | Motor | Piston | Admittance | TwoPort;

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

/** A joint without any potential across it. Its flow is the sum of what runs through it: what several boxes take in. */
export interface Meter {
  readonly kind: 'meter';
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

/** A chain matrix over frequency: `[A B; C D]`, each a complex column. */
export interface ChainColumns {
  readonly A: ComplexColumn;
  readonly B: ComplexColumn;
  readonly C: ComplexColumn;
  readonly D: ComplexColumn;
}

/**
 * A line between two nodes, each against ground, by its chain matrix: potential and flow at the near node from those at
 * the far one. A duct with loss, a horn, a room of one's own. Its flow is the one that arrives at the far node.
 */
export interface TwoPort {
  readonly kind: 'twoPort';
  readonly name: string;
  readonly nodes: Nodes;
  /** Fills the chain matrix for each frequency in Hz; AD − BC is 1 where the line is reciprocal. */
  readonly chain: (frequencies: Float64Array, out: ChainColumns) => void;
  /** Impedance and delay where the line is uniform and lossless: circuit simulators know that one. */
  readonly lossless?: { readonly impedance: number; readonly delay: number };
}

/** A quarter wave has a cosine of nothing: what the rounding of its angle leaves is none. */
const unlessRounding = (value: number, angle: number) => (Math.abs(value) <= Number.EPSILON * angle ? 0 : value);

/**
 * A uniform lossless line: a tube whose walls take nothing.
 *
 * @validity plane waves: the tube narrow against the wavelength
 * @neglects losses, ends
 * @returns the element
 * @source morse1968 (transmission line of a tube)
 * @example losslessLine('vent', ['box', 'ground'], 2e5, 0.001)
 */
export const losslessLine = (name: string, nodes: Nodes, impedance: number, delay: number): TwoPort => ({
  kind: 'twoPort',
  name,
  nodes,
  lossless: { impedance, delay },
  chain: (frequencies, { A, B, C, D }) => {
    for (let i = 0; i < frequencies.length; i++) {
      const angle = 2 * Math.PI * (frequencies[i] as number) * delay;
      const sine = unlessRounding(Math.sin(angle), angle);
      A.re[i] = D.re[i] = unlessRounding(Math.cos(angle), angle);
      B.im[i] = impedance * sine;
      C.im[i] = sine / impedance;
      A.im[i] = D.im[i] = B.re[i] = C.re[i] = 0;
    }
  },
});

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
