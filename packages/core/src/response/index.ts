/** What does a system do at each frequency? */
export { type Columns, levelColumn, radiatedPower, REFERENCE_PRESSURE, respond } from './respond.js';
/** How is a network swept, and probe by probe? */
export { type CompiledNetwork, compileNetwork, type ProbeColumns, probeColumns, probeNamed } from './compile.js';
/** How deep does it reach? */
export { type Cutoff, type CutoffOptions, cutoff, HALF_POWER, levelCrossings, type Reference } from './cutoff.js';
/** Where are its peaks, and how even is it? */
export { type Extremum, type Features, features } from './features.js';
/** What must its amplifier bear? */
export { type LowestLoad, lowestLoad } from './lowest-load.js';
/** How loud is it far above its resonances? */
export { referenceLevel } from './level.js';
/** What is its answer to a step? */
export { type StepResponse, stepResponse } from './step.js';
/** How does a result change with every element? */
export {
  cutoffGradient,
  type ExtremumOptions,
  type Gradient,
  type GradientResult,
  greatestGradient,
  levelGradient,
} from './gradient.js';
