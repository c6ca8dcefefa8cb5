/** What does a system do at each frequency? */
export {
  type Columns,
  compileResponse,
  radiatedPower,
  type ResponseColumns,
  type ResponseKernel,
  respond,
} from './respond.js';
/** How loud is a flow of air, and how loud is a system far above its resonances? */
export { levelColumn, REFERENCE_PRESSURE, referenceLevel, referenceLevelOf } from './level.js';
/** How is the network of a system swept, probe by probe? */
export { compiledSystem, type ProbeColumns, probeColumns, probeNamed } from './compile.js';
/** By how much do the cone and the air in the vent lag behind the drive? */
export { type ProbeOptions, probePhase } from './probe-phase.js';
/** How deep does a system reach? */
export { type Cutoff, type CutoffOptions, cutoff, HALF_POWER, levelCrossings } from './cutoff.js';
export type { Reference } from './reference.js';
/** Which band does a system pass? */
export { type Passband, passband } from './passband.js';
/** Where are the peaks of a response, and how even is it? */
export { type Features, features } from './features.js';
/** At which frequency is a curve greatest or least? */
export type { Extremum } from './extremum.js';
/** What load does a system put on its amplifier? */
export { type LowestLoad, lowestLoad } from './lowest-load.js';
/** What is the step response of a system? */
export { type StepFit, type StepOptions, type StepResponse, stepResponse } from './step.js';
/** How does any value of a system, with its phase, change with every number of the network? */
export { type ComplexGradientResult, complexGradient } from './complex-gradient.js';
/** How does a result change with every number of the network? */
export {
  type ExtremumOptions,
  type Gradient,
  type GradientResult,
  greatestGradient,
  levelGradient,
} from './gradient.js';
/** How does the group delay change with every number of the network? */
export { groupDelayGradient } from './group-delay-gradient.js';
/** How does the end of a band change with every number of the network? */
export { cutoffGradient, lowerEndGradient } from './cutoff-gradient.js';
/** What does a system do at a drive at which its vent loses? */
export {
  type AtLevel,
  type AtLevelKernel,
  type AtLevelOptions,
  compileAtLevel,
  type OpeningAtLevel,
  respondAtLevel,
} from './at-level.js';
export type { LossByVent } from './openings-at-level.js';
/** How do tuning and losses of a vented box change with level? */
export { type BoxResonance, type TuningAtLevel, type TuningAtLevelOptions, tuningAtLevel } from './tuning-at-level.js';
/** How strong is the third harmonic of a vent that loses? */
export { type ThirdHarmonicOptions, ventThirdHarmonic } from './vent-third-harmonic.js';
