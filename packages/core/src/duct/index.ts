/** How much does the air outside an open end add to the length of a tube? */
export {
  type EndCorrection,
  finiteFlange,
  flanged,
  type Opening,
  pistonInFlange,
  unflanged,
} from './end-correction.js';
/** What is a duct as an element of a network? */
export {
  conicalTaper,
  type DuctNumbers,
  ductElement,
  ductValues,
  exponentialTaper,
  type Taper,
  wedgeTaper,
} from './duct-element.js';
/** What does a filling of fibre do to the air in a duct? */
export { type FillInput, withFill } from './fibre-fill.js';
/** What is the end correction of a flared end? */
export { type FlareInput, flared } from './flare.js';
/** What is the chain matrix of a uniform line over frequency? */
export { type Chain, compileLine, type UniformLineInput } from './line-chain.js';
/** How much is a wave in a tube attenuated, and how fast does it travel? */
export { type LineConstants, type LineInput, lineConstants } from './line-constants.js';
/** How much friction and heat do the walls of a tube or slit take from the air? */
export {
  type LineSection,
  type RoundSectionInput,
  roundSection,
  type SlitSectionInput,
  slitSection,
  withoutLoss,
} from './line-section.js';
/** How do other openings or walls nearby change an end correction? */
export { type MutualLengthInput, mutualLength, withNeighbours } from './neighbours.js';
/** What flows into a line that is open at both ends? */
export { type AdmittanceKernel, compileOpenLine, type LineEnd, type OpenLine } from './open-line.js';
/** How wide is a duct along its length? */
export {
  conicalProfile,
  exponentialProfile,
  type FlaredProfileInput,
  flaredProfile,
  type Profile,
  type TaperInput,
} from './profile.js';
/** What is the acoustic mass of a duct of any profile, and where is the air in it fastest? */
export { type ProfileMass, profileMass } from './profile-mass.js';
/** What is the radiation impedance of an opening? */
export { flangedRadiation, pistonRadiation, type Radiation, unflangedRadiation } from './radiation.js';
/** What are the acoustic mass and the radiation resistance in front of a small piston? */
export { type PistonInput, type RadiationLoad, radiationLoad } from './radiation-load.js';
/** What is the sound that leaves an opening as an element of a network? */
export { radiationResistance } from './radiation-resistance.js';
/** What is the end correction of a rectangular opening in a wall or along other walls? */
export { alongWalls, rectangularPiston } from './rectangle-end.js';
/** At what frequency does a cavity with a neck resonate? */
export { type Resonance, type ResonatorInput, resonance } from './resonance.js';
/** What is the radiation impedance of a small opening, and how is any radiation compiled over frequency? */
export { compileRadiation, type RadiationInput, smallOpening } from './small-opening.js';
/** What is the chain matrix of a duct of any profile over frequency? */
export { compileSteppedLine } from './stepped-line.js';
/** What is the acoustic mass of the air in a tube? */
export { type TubeInput, tubeMass } from './tube-mass.js';
/** How much more do walls take that are not smooth and round? */
export { withWallLoss } from './wall-loss.js';
/** How much pressure does air lose that swings to and fro in a duct? */
export {
  type FlowLoss,
  lossesTogether,
  type QuadraticLoss,
  type QuadraticLossInput,
  quadraticLoss,
} from './flow-loss.js';
/** How much does air lose that flows into an end, by the rounding of its edge? */
export { type EntranceInput, entranceLoss, type LossRange } from './entrance-loss.js';
/** How much does air lose in a bend? */
export { type BendLossInput, bendLoss } from './bend-loss.js';
/** How much more do walls take when the air at them is turbulent? */
export { type TurbulentWallInput, turbulentFriction, turbulentWall } from './turbulent-wall.js';
/** By which numbers is air compared that swings to and fro? */
export { type OscillatingFlow, type OscillatingFlowInput, oscillatingFlow } from './oscillating-flow.js';
