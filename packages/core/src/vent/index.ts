/** How fast is the air in a vent, and which limits are customary? */
export {
  type AirSpeedCustom,
  airSpeedCustoms,
  airSpeedPeak,
  airSpeedRms,
  type PeakFlowInput,
  type RmsFlowInput,
} from './air-speed.js';
/** Which volume does the vent work on: the one before it is put in, or the one left? */
export type { BoxAirInput } from './air-volume.js';
/** How long does a vent act, and what does the air in it weigh? */
export { acousticMass, effectiveLength, type VentAtFrequency } from './effective-length.js';
/** How long must a vent be for a tuning? */
export { compileLengthForTuning, type LengthForTuningInput, lengthForTuning } from './length-for-tuning.js';
/** What is a round vent? */
export type { BendInput, RoundVentInput, RoundVentSection } from './round-vent.js';
/** To which frequency does a vent tune a box? */
export { type Tuning, type TuningInput, tuning } from './tuning.js';
