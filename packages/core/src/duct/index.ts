/** How much longer does a tube act than it is, at an open end? */
export {
  type EndCorrection,
  finiteFlange,
  flanged,
  type Opening,
  pistonInFlange,
  unflanged,
} from './end-correction.js';
/** And when the end is flared? */
export { type FlareInput, flared } from './flare.js';
/** What does a uniform line do, as a chain matrix over frequency? */
export { type Chain, compileLine, type UniformLineInput } from './line-chain.js';
/** How much does a wave lose in a tube, and how fast is it? */
export { type LineConstants, type LineInput, lineConstants } from './line-constants.js';
/** What do the walls do to the air in a section? */
export {
  type LineSection,
  type RoundSectionInput,
  roundSection,
  type SlitSectionInput,
  slitSection,
  withoutLoss,
} from './line-section.js';
/** And when other openings or walls are near? */
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
/** What does the air in a duct of any profile weigh, and where is it fastest? */
export { type ProfileMass, profileMass } from './profile-mass.js';
/** What does the air in front of an opening ask of it, over frequency? */
export { flangedRadiation, pistonRadiation, type Radiation, unflangedRadiation } from './radiation.js';
/** What does the air in front of a small piston weigh, and what does it take away? */
export { type PistonInput, type RadiationLoad, radiationLoad } from './radiation-load.js';
/** And when the opening is a rectangle, free or beside walls? */
export { alongWalls, rectangularPiston } from './rectangle-end.js';
/** Where does a cavity with a neck resonate, and is it small enough for the formula? */
export { type Resonance, type ResonatorInput, resonance } from './resonance.js';
/** And when it is small against the wavelength? */
export { compileRadiation, type RadiationInput, smallOpening } from './small-opening.js';
/** What does a duct of any profile do, as a chain matrix over frequency? */
export { compileSteppedLine } from './stepped-line.js';
/** What does the air in a tube weigh? */
export { type TubeInput, tubeMass } from './tube-mass.js';
