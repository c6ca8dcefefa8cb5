import { type Air, standardAir } from '../air/index.js';
import type { Driver } from '../driver/index.js';
import { type Family, type System, systemOf } from '../enclosure/index.js';
import { compileNetwork, type Probe, type Topology } from '../network/index.js';
import { logarithmicGrid } from '../quantity/index.js';
import { compiledSystem, type ProbeColumns, probeColumns } from '../response/index.js';
import type { By } from './rescaling.js';

/** What is stated of the air of a chamber: its volume, its tuning, its losses there, and the narrowest section of its vent. */
export type StatedChamber = Readonly<
  Partial<Record<'netVolume' | 'fillGain' | 'ventArea' | 'fb' | 'QL' | 'QA' | 'QP', number>>
>;

/** What the laws of a family are tried on. */
export interface FamilyTrial<Spec, Input = Spec> {
  readonly family: Family<Spec, Input>;
  readonly spec: Input | Spec;
  /** Default: air at 20 °C. */
  readonly air?: Air;
  /** The driver of each motor, in the order of the motors; default: those found in the spec. */
  readonly drivers?: readonly Driver[];
  /** What is stated for each compliance of air, in their order, in SI units. Default: each record of the spec that has a `netVolume`, if there are as many. */
  readonly chambers?: readonly StatedChamber[];
  /** Sizes of probes per volt of drive that are known from a calculation by hand, a circuit simulator or a measurement. They agree within 0.1 %. */
  readonly known?: readonly { readonly probe: string; readonly frequency: number; readonly perVolt: number }[];
  /** Probes of cones that a positive voltage is meant to pull inwards. */
  readonly opposed?: readonly string[];
  /**
   * The same spec and air in another system of units: each number times its factor for metre, kilogram, second and ampere.
   * Without it, scaling is not tried. See `rescaledDriver` and `rescaledAir`.
   */
  readonly rescaled?: (by: By) => { readonly spec: Input | Spec; readonly air: Air };
  /** Frequencies that must be answered, such as the tuning itself, Hz. */
  readonly frequencies?: readonly number[];
}

/** A family with its spec, read once, in its air, as every law uses it. */
export interface Tried<Spec, Input = Spec> {
  readonly trial: FamilyTrial<Spec, Input>;
  readonly air: Air;
  readonly grid: Float64Array;
  /** The spec as it was before anything read it. */
  readonly handedIn: string;
  /** Made anew at each call, so that no law keeps anything for the next. */
  readonly system: (air?: Air) => System<Spec>;
}

/** A trial with its defaults. */
export function prepared<Spec, Input>(trial: FamilyTrial<Spec, Input>): Tried<Spec, Input> {
  const { family, spec, air = standardAir, frequencies = [] } = trial;
  const grid = Float64Array.from([...logarithmicGrid(2, 20_000, 301), ...frequencies].sort((a, b) => a - b));
  const handedIn = JSON.stringify(spec);
  return { trial, air, grid, handedIn, system: (medium = air) => systemOf(family, spec, medium) };
}

/** All probes of a system. */
export const columnsOf = (system: System, frequencies: Float64Array): ProbeColumns =>
  probeColumns(compiledSystem(system), frequencies);

/** Any readings of the network of a system, whatever its probes and outlets are. */
export function readings(
  { network: { topology, values } }: System,
  probes: Readonly<Record<string, Probe>>,
  frequencies: Float64Array,
  elements: Topology['elements'] = topology.elements,
): ProbeColumns {
  const names = new Set(elements.map(({ name }) => name));
  const own = Object.fromEntries(Object.entries(values).filter(([name]) => names.has(name)));
  return probeColumns(compileNetwork({ topology: { elements, probes, outlets: [] }, values: own }), frequencies);
}

/** The number of an element; `undefined` for an element over frequency. */
export const numberOf = ({ network: { values } }: System, name: string): number => {
  const value = values[name];
  return typeof value === 'number' ? value : Number.NaN;
};
