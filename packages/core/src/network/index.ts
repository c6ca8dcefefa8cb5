/** Which elements does a network have, and what can be read off it? */
export {
  type Branch,
  type BranchKind,
  branch,
  type ChainColumns,
  type Element,
  type Law,
  type Line,
  losslessLine,
  type Meter,
  type Motor,
  type Network,
  type Nodes,
  type Outlet,
  type Piston,
  type Probe,
  type Reading,
  type Source,
  type Standing,
  type Topology,
  type Values,
} from './element.js';
/** How is a topology compiled once for all networks of its kind? */
export { compile, compileNetwork } from './compile.js';
/** What are a compiled topology and a network that can be swept? */
export type { Compile, CompiledNetwork, CompiledTopology, Polynomials } from './compiled.js';
/** What are the polynomials of a topology? */
export { compileLumped, compilePolynomials } from './polynomials.js';
/** How is a network of any elements solved at each frequency? */
export { compilePlan } from './plan.js';
/** Where do the numbers of a topology stand, and how are they set by name? */
export { type Setter, type Slot, type Slots, slotsOf, strictSetter, valuesOf } from './slots.js';
/** How are polynomials swept over frequency? */
export { type SweepRows, sweepRows } from './sweep.js';
/** How would a circuit simulator read a network? */
export { netlist } from './netlist.js';
/** What are the state matrices of a lumped network? */
export { type StateSpace, stateSpace } from './state-space.js';
/** Which lumped network is like one with elements over frequency, and how far is it off? */
export { type LumpedFit, lumpedFit } from './lumped-fit.js';
/** How does a probe change with each number of a network, and with frequency? */
export {
  compileGradient,
  type GradientColumns,
  type GradientNumber,
  gradientColumns,
  type NetworkGradient,
} from './gradient.js';
/** How does a probe change at one frequency with each number, by name? */
export { type Complex, gradientAt, type ProbeGradient, probeGradient } from './probe-gradient.js';
/** What are the faults of a missing probe and of a resonance that nothing damps? */
export { missingProbe, undamped } from './refusals.js';
/** How is a resistance put behind an element? */
export { withSeriesResistance } from './series-resistance.js';
