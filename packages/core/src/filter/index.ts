/** Which high-pass has the flattest response above its corner? */
export { type ButterworthInput, butterworthHighPass } from './butterworth.js';
/** How is a response filtered? */
export { compileFilter, type FilterKernel } from './compile.js';
/** How is a filter described? */
export type { Filter } from './filter.js';
/** What is the group delay of a filter? */
export { filterGroupDelay } from './group-delay.js';
/** Which high-pass has given quality factors? */
export { type HighPassByQInput, highPassByQ } from './high-pass.js';
/** How much does a filter change the level? */
export { filterLevel } from './level.js';
