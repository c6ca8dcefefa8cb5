/** Which input matters, and how much? */
export { type Sensitivity, sensitivity } from './sensitivity.js';
