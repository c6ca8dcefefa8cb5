/** Which wishes contradict each other? */
export { minimalConflict } from './conflict.js';
/** Where does a walk downhill on whole numbers end? */
export { descend } from './descend.js';
/** Which cell of a lattice is best, over all of it? */
export { type Found, survey } from './survey.js';
/** Which input matters, and how much? */
export { type Sensitivity, sensitivity } from './sensitivity.js';
