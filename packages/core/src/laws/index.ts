/** Does an alignment type obey the laws of its seam? */
export { alignmentLaws } from './alignment-laws.js';
/** Does your own box family obey the laws of box families? */
export { familyLaws } from './family-laws.js';
/** What is a box family tried on? */
export type { FamilyTrial, StatedChamber } from './family-trial.js';
/** What are a driver and the air in another system of units? */
export { type By, type Dimension, rescaledAir, rescaledDriver } from './rescaling.js';
/** Does a model of a voice coil obey the laws of coils, and one of a suspension those of suspensions? */
export { coilLaws } from './coil-laws.js';
export { suspensionLaws } from './suspension-laws.js';
/** Does an element over frequency obey the laws of such elements? */
export { type LawElementTrial, lawElementLaws } from './law-element-laws.js';
/** Does your own end correction obey the laws of end corrections? */
export { type EndCorrectionTrial, endCorrectionLaws } from './end-correction-laws.js';
/** Does your own radiation impedance obey the laws of radiation? */
export { type RadiationTrial, radiationLaws } from './radiation-laws.js';
/** Does a cross-section of a line obey the laws of cross-sections? */
export { lineSectionLaws } from './line-section-laws.js';
/** Does a profile of a duct obey the laws of profiles? */
export { profileLaws } from './profile-laws.js';
/** Does your own limit obey the laws of limits? */
export { type LimitTrial, limitLaws } from './limit-laws.js';
/** Does a reflection factor of a wall obey the laws of such factors? */
export { reflectionLaws } from './reflection-laws.js';
/** Does your own filter obey the laws of filters? */
export { filterLaws } from './filter-laws.js';
/** What is the result of trying a law? */
export type { LawResult } from './law.js';
/** Does your own loss of flow obey the laws of losses? */
export { type FlowLossTrial, flowLossLaws } from './flow-loss-laws.js';
