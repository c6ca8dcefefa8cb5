/** Does an end correction of one's own behave as one? */
export { type EndCorrectionTrial, endCorrectionLaws } from './end-correction-laws.js';
/** What does a trial of a law say? */
export type { LawResult } from './law.js';
/** Does a box family of one's own behave as one? */
export { type FamilyTrial, systemLaws } from './system-laws.js';
