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
export type { AirVolumeInput } from './air-volume.js';
/** How long does a vent act, and what does the air in it weigh? */
export { acousticMass, effectiveLength, type VentAtFrequency } from './effective-length.js';
/** How long must a vent be for a tuning? */
export { compileLengthForTuning, type LengthForTuningInput, lengthForTuning } from './length-for-tuning.js';
/** What is a round vent? */
export type { BendInput } from './bend.js';
export type { RoundVentInput, RoundVentSection } from './round-vent.js';
/** What is a slot, and what is a vent of either form? */
export type { SlotVentInput, SlotVentSection } from './slot-vent.js';
export type { VentInput, VentSection } from './vent-input.js';
/** To which frequency do several vents tune a box, and how do they share the flow? */
export { type SeveralVents, type SeveralVentsInput, severalVents, type VentShare } from './several-vents.js';
/** Where does a vent resonate by itself, and how sharply? */
export { type StandingWave, type StandingWavesInput, standingWaves } from './standing-waves.js';
/** To which frequency does a vent tune a box? */
export { type Tuning, type TuningInput, tuning } from './tuning.js';
/** What does a vent do as a line with losses, in a network? */
export { compileVentAdmittance, compileVentMouth, type VentLineInput } from './vent-line.js';
