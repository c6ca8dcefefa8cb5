/** How does a linear system move over time, exactly? */
export { compileLinear, type LinearOptions, type LinearSimulation, type Simulated } from './linear.js';
/** How does a voltage go on between samples, and what does that do to a sine? */
export { firstOrderHold, type Hold, holdTransfer, zeroOrderHold } from './hold.js';
