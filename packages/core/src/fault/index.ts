/** What was wrong with an input? */
export { type Fault, type FaultCode, faultLine, InputError, isInputError, refuse, toldAtMost } from './fault.js';
/** Is an answer outside the range of its formula, or can a thing not be built? */
export { type Impossible, impossible, type LengthWords, type Reason, type Warning } from './outcome.js';
/** How is it told to people who read lengths in another unit? */
export { sayFault, sayWords } from './say.js';
/** How is a text from outside shown without letting it control the terminal? */
export { visible, visibleStart } from './visible.js';
