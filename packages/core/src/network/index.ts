/** What are the polynomials of a lumped topology? */
export { compileTopology, elementValues, type Topology } from './compile.js';
/** Which elements are there, and what is read off a network? */
export {
  type Admittance,
  type Branch,
  type BranchKind,
  branch,
  type ChainColumns,
  type Element,
  losslessLine,
  type Meter,
  type Motor,
  type Network,
  type Nodes,
  type Piston,
  type Probe,
  type Source,
  type TwoPort,
} from './element.js';
/** How would a circuit simulator read it? */
export { netlist } from './netlist.js';
/** How is any network solved frequency by frequency? */
export { compilePlan, type Plan } from './plan.js';
/** How are polynomials swept over frequency? */
export { sweepRows } from './sweep.js';
/** What is the network with its coil inductance shorted? */
export { withoutCoilInductance } from './without-coil-inductance.js';
/** How does a probe change with each element, and with frequency? */
export { compileGradient, type GradientColumns, gradientColumns, type NetworkGradient } from './gradient.js';
/** And at one frequency, by name? */
export { type Complex, type ProbeGradient, probeGradient } from './probe-gradient.js';
/** What is said of a probe that is not there? */
export { missingProbe } from './refusals.js';
