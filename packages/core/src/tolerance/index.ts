/** Which inputs matter most, and how much? */
export { type Sensitivity, sensitivity } from './sensitivity.js';
