/** Which high-pass is flattest above its corner? */
export { type ButterworthInput, butterworthHighPass } from './butterworth.js';
/** How is any response filtered? */
export { compileFilter, type FilterKernel } from './compile.js';
/** What is a filter? */
export type { Filter } from './filter.js';
/** How late does it pass each frequency? */
export { filterGroupDelay } from './group-delay.js';
/** Which high-pass has given quality factors? */
export { type HighPassByQInput, highPassByQ } from './high-pass.js';
/** How much does it take away? */
export { filterLevel } from './level.js';
