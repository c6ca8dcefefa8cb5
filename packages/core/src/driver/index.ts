/** How is a driver described by its physical parameters? */
export { type Driver, type DriverInput, driver, driverShape } from './driver.js';
/** What does a voice coil have besides its resistance, and how do you write a model of your own? */
export type { CoilBranch, CoilFormula, CoilModel } from './coil.js';
export { coilOverFrequency } from './coil-over-frequency.js';
export { inductor } from './inductor.js';
export { lossyInductor } from './lossy-inductor.js';
export { type FourParameterInput, fourParameterInductor } from './four-parameter-inductor.js';
export { type SemiInductorInput, semiInductor } from './semi-inductor.js';
export { type Lr2Input, lr2Inductor } from './lr2-inductor.js';
/** How does the compliance of a suspension change with frequency, and how do you write a model of your own? */
export type { SuspensionFormula, SuspensionModel } from './suspension.js';
export { suspensionOverFrequency } from './suspension-over-frequency.js';
export { constantSuspension } from './constant-suspension.js';
export { logarithmicCreep } from './logarithmic-creep.js';
export { hystereticDamping } from './hysteretic-damping.js';
/** Which single driver is equivalent to several? */
export { type DriverGroup, type GroupInput, group } from './group.js';
/** What are the Thiele/Small parameters, the efficiency and the sensitivity of a driver? */
export {
  type DriverParameters,
  driverParameters,
  type EfficiencyInput,
  levelHalfSpace,
  referenceEfficiency,
} from './parameters.js';
/** Which data may a data sheet give? */
export type { DriverData } from './driver-data.js';
/** Is a data sheet sufficient and consistent, and what follows from it? */
export { type Blocked, type CompletedDriver, completeDriver } from './completion.js';
/** When does a data sheet contradict itself, and how was a value derived? */
export { type Derivation, type Deviation, deviationLimits } from './audit.js';
/** How is a passive radiator described by its physical parameters? */
export {
  type PassiveRadiator,
  type PassiveRadiatorInput,
  passiveRadiator,
  passiveRadiatorField,
} from './passive-radiator.js';
/** Which quantities of a driver follow from which others? */
export { type RelatedField, type Relation, relations } from './relations.js';
/** What is the impedance of a driver without a box? */
export {
  type Coil,
  coilImpedance,
  compileCoilImpedance,
  compileFreeAirImpedance,
  freeAirImpedance,
  type ImpedanceKernel,
} from './impedance.js';
