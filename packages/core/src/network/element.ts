import type { ComplexColumn } from '../numeric/index.js';

/**
 * Elements of three domains in one nodal description. A node carries a potential, an element a flow:
 *
 * | domain | potential of a node | flow through an element | `ground` |
 * | --- | --- | --- | --- |
 * | electrical | voltage, V | current, A | the other terminal |
 * | mechanical | velocity, m/s | force, N | the frame, at rest |
 * | acoustical | pressure, Pa | volume flow, m³/s | the air outside, at rest |
 *
 * Velocity is the mechanical potential (the mobility analogy). Parts that move together therefore share a node, a motor is
 * an ideal transformer and a piston a gyrator, and no domain has to be turned into its dual (@source beranek2012 ch. 3).
 *
 * An element holds no number. Its numbers are slots in the values of a network, under the element's name.
 */
export type Element = Branch | Source | Meter | Motor | Piston | Law | Line;

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

/** How an element stands in the equations. A zero impedance is a short; a zero admittance is no connection. */
export type Standing = 'impedance' | 'admittance';

interface Named {
  readonly name: string;
  readonly nodes: Nodes;
}

interface Standable {
  /** Default: an impedance where the element is in series with its neighbours, otherwise an admittance. */
  readonly stands?: Standing;
  /** `false` leaves the element out of the reference level: an impedance becomes a short, an admittance no connection. */
  readonly inReference?: false;
}

/** One value: Ω, H, F · kg, m/N, N·s/m · kg/m⁴, m³/Pa, Pa·s/m³. */
export interface Branch extends Named, Standable {
  readonly kind: BranchKind;
}

/** The drive: 1 V rms between its nodes. All columns of a sweep are per volt of it. Its flow is the current it delivers. */
export interface Source extends Named {
  readonly kind: 'source';
}

/** A joint without any potential across it. Its flow is the total flow through it. */
export interface Meter extends Named {
  readonly kind: 'meter';
}

/** A voice coil in its gap: voltage = Bl × velocity, force = Bl × current. Its value is Bl, its flow the current. */
export interface Motor {
  readonly kind: 'motor';
  readonly name: string;
  readonly electrical: Nodes;
  readonly mechanical: Nodes;
}

/** A cone: its mechanical node pushes air into `front` and draws it from `rear`. Its value is Sd, its flow Sd × velocity. */
export interface Piston {
  readonly kind: 'piston';
  readonly name: string;
  readonly mechanical: Nodes;
  readonly front: string;
  readonly rear: string;
}

/**
 * A two-terminal element over frequency: eddy currents, creep, fibre, a tube with friction. Its parameters are slots of the
 * values: `values[at]`, `values[at + 1]`, and so on.
 */
export interface Law extends Named, Standable {
  readonly kind: 'law';
  readonly stands: Standing;
  readonly parameters: readonly string[];
  /** Fills its admittance or impedance, whichever stands in the equations, at each frequency in Hz. `out` is zero at first. */
  readonly fill: (values: Float64Array, at: number, frequencies: Float64Array, out: ComplexColumn) => void;
  /** Fills the derivative by ln f of what `fill` fills. Without it, a difference quotient over ±10⁻⁵ is used. */
  readonly slope?: (values: Float64Array, at: number, frequencies: Float64Array, out: ComplexColumn) => void;
  /** Fills the derivative of the same by one of its parameters, by its place among them. Without it, a difference quotient is used. */
  readonly parameterSlope?: (
    parameter: number,
    values: Float64Array,
    at: number,
    frequencies: Float64Array,
    out: ComplexColumn,
  ) => void;
  /** Lines of a netlist, where a circuit simulator can express the element. Without it, the netlist has a comment instead. */
  readonly netlist?: (values: readonly number[], name: string, nodes: Nodes) => readonly string[];
  /** The two kinds of branches of which {@link lumpedFit} builds something like it: one that stores and one that loses. */
  readonly like?: readonly [storing: BranchKind, losing: BranchKind];
  /** The `Compile` of a network with it, where its family compiles lumped elements alone. */
  readonly compile?: (topology: Topology) => unknown;
}

/** A chain matrix over frequency: `[A B; C D]`, each a complex column. */
export interface ChainColumns {
  readonly A: ComplexColumn;
  readonly B: ComplexColumn;
  readonly C: ComplexColumn;
  readonly D: ComplexColumn;
}

/**
 * A line between two nodes and ground, such as a duct with losses or a horn. Its chain matrix gives potential and flow at the
 * near node from those at the far one. Its flow is the one that arrives at the far node.
 */
export interface Line extends Named {
  readonly kind: 'line';
  readonly parameters: readonly string[];
  /** Fills the chain matrix at each frequency in Hz; AD − BC is 1 where the line is reciprocal. `out` is zero at first. */
  readonly fill: (values: Float64Array, at: number, frequencies: Float64Array, out: ChainColumns) => void;
  readonly netlist?: (values: readonly number[], name: string, nodes: Nodes) => readonly string[];
}

/** A reading of a solved network: the potential of a node, or the flow of an element. */
export type Reading =
  | { readonly of: 'potential'; readonly node: string; readonly sign?: -1 }
  | { readonly of: 'flow'; readonly element: string; readonly sign?: -1 };

/** A reading that is multiplied by a number of the values, if `factor` names its slot. */
export type Probe = Reading & { readonly factor?: string };

/** An opening through which air leaves the system. */
export interface Outlet {
  readonly name: string;
  /** Positive out of the system. */
  readonly flow: Reading;
  /** The slot for how much later its sound arrives than that of the nearest outlet, s. Without it there is no delay. */
  readonly delay?: string;
}

/** A network without numbers. It is compiled once for all networks of its kind. */
export interface Topology {
  readonly elements: readonly Element[];
  readonly probes: Readonly<Record<string, Probe>>;
  /** Their sum is read as `radiatedFlow`, first of all probes. */
  readonly outlets: readonly Outlet[];
}

/** The numbers of a topology, by the names of elements, factors and delays. */
export type Values = Readonly<Record<string, number | readonly number[]>>;

/** A topology with its numbers. */
export interface Network {
  readonly topology: Topology;
  readonly values: Values;
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

/**
 * Makes a branch.
 *
 * @example branch('mass', 'Mms', ['cone', 'ground'])
 */
export const branch = (
  kind: BranchKind,
  name: string,
  nodes: Nodes,
  { stands, inReference }: Standable = {},
): Branch => ({ kind, name, nodes, ...(stands && { stands }), ...(inReference === false && { inReference }) });

/** The cosine of a quarter wave is zero. A remainder as small as the rounding of the angle is set to zero. */
const unlessRounding = (value: number, angle: number) => (Math.abs(value) <= Number.EPSILON * angle ? 0 : value);

/**
 * A uniform lossless line: a tube whose walls absorb nothing. Its values are the wave impedance and the delay.
 *
 * @validity plane waves in a tube that is narrow compared with the wavelength
 * @neglects losses, ends
 * @returns the element
 * @source morse1968 (transmission line of a tube)
 * @example losslessLine('vent', ['box', 'ground']) // values: { vent: [2e5, 0.001] }
 */
export const losslessLine = (name: string, nodes: Nodes): Line => ({
  kind: 'line',
  name,
  nodes,
  parameters: ['impedance', 'delay'],
  fill: (values, at, frequencies, { A, B, C, D }) => {
    const impedance = values[at]!;
    const delay = values[at + 1]!;
    for (let i = 0; i < frequencies.length; i++) {
      const angle = 2 * Math.PI * frequencies[i]! * delay;
      const sine = unlessRounding(Math.sin(angle), angle);
      A.re[i] = D.re[i] = unlessRounding(Math.cos(angle), angle);
      B.im[i] = impedance * sine;
      C.im[i] = sine / impedance;
    }
  },
  netlist: ([impedance, delay], plain, [a, b]) => [`T_${plain} ${a} 0 ${b} 0 Z0=${impedance} TD=${delay}`],
});
