/** What does a system do at each frequency? */
export { type Columns, levelColumn, radiatedPower, REFERENCE_PRESSURE, respond } from './columns.js';
/** How is a network swept, and probe by probe? */
export { type CompiledNetwork, compileNetwork, type ProbeColumns, probeColumns, probeNamed } from './compile.js';
/** How deep does it reach, how even is it, where are the peaks? */
export {
  type Cutoff,
  type CutoffOptions,
  compileLevel,
  cutoff,
  type Extremum,
  type Features,
  features,
  HALF_POWER,
  levelCrossings,
  type Reference,
  referenceLevel,
} from './features.js';
/** What is its answer to a step? */
export { type StepResponse, stepResponse } from './step.js';
