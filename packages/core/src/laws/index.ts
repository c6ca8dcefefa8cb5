/** Does a box family of one's own behave as one? */
export { familyLaws } from './family-laws.js';
/** On what is a family tried? */
export type { FamilyTrial } from './family-trial.js';
/** What are a driver and the air in another system of units? */
export { type By, type Dimension, rescaledAir, rescaledDriver } from './rescaling.js';
/** Does an element over frequency behave as one? */
export { type LawElementTrial, lawElementLaws } from './law-element-laws.js';
/** Does an end correction of one's own behave as one? */
export { type EndCorrectionTrial, endCorrectionLaws } from './end-correction-laws.js';
/** Does a radiation of one's own behave as one? */
export { type RadiationTrial, radiationLaws } from './radiation-laws.js';
/** Does a cross-section of a line behave as one? */
export { lineSectionLaws } from './line-section-laws.js';
/** Does a profile of a duct behave as one? */
export { profileLaws } from './profile-laws.js';
/** Does a limit of one's own behave as one? */
export { type LimitTrial, limitLaws } from './limit-laws.js';
/** Does a high-pass of one's own behave as one? */
export { filterLaws } from './filter-laws.js';
/** What does a trial of a law say? */
export type { LawResult } from './law.js';
