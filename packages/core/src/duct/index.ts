/** How much longer does a tube act than it is, at an open end? */
export {
  type EndCorrection,
  finiteFlange,
  flanged,
  type Opening,
  pistonInFlange,
  unflanged,
} from './end-correction.js';
/** What does the air in front of a small piston weigh, and what does it take away? */
export { type PistonInput, type RadiationLoad, radiationLoad } from './radiation-load.js';
/** Where does a cavity with a neck resonate, and is it small enough for the formula? */
export { type Resonance, type ResonatorInput, resonance } from './resonance.js';
/** What does the air in a tube weigh? */
export { type TubeInput, tubeMass } from './tube-mass.js';
