/** What was wrong with an input, all at once? */
export { type Fault, type FaultCode, faultLine, InputError, isInputError, refuse, toldAtMost } from './fault.js';
/** Was the answer outside a formula's range, or can the thing not be built? */
export { type Impossible, impossible, type Reason, type Warning } from './outcome.js';
/** How is a text from outside shown, so that it cannot steer a terminal? */
export { visible, visibleStart } from './visible.js';
