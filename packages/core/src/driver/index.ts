/** What is a driver, in physical parameters? */
export { type Driver, type DriverInput, driver, driverShape } from './driver.js';
/** What do several drivers amount to? */
export { type DriverGroup, type GroupInput, group } from './group.js';
/** What does the data sheet of this driver say, or should it say? */
export {
  type DriverParameters,
  driverParameters,
  type EfficiencyInput,
  levelHalfSpace,
  referenceEfficiency,
} from './parameters.js';
/** What may a sheet give? */
export type { DriverData } from './driver-data.js';
/** Does a sheet suffice, does it contradict itself, and what follows from it? */
export { type Blocked, type CompletedDriver, completeDriver } from './completion.js';
/** When does a sheet contradict itself, and how was a value found? */
export { type Derivation, type Deviation, deviationLimits } from './audit.js';
/** What is a radiator without a motor, in physical parameters? */
export {
  type PassiveRadiator,
  type PassiveRadiatorInput,
  passiveRadiator,
  passiveRadiatorField,
} from './passive-radiator.js';
/** Which quantities of a driver follow from which? */
export { type RelatedField, type Relation, relations } from './relations.js';
/** What does an amplifier see of a driver without a box? */
export {
  type Coil,
  coilImpedance,
  compileCoilImpedance,
  compileFreeAirImpedance,
  freeAirImpedance,
  type ImpedanceKernel,
} from './impedance.js';
