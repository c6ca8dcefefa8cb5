/** How fast is the air in a vent, and which limits are customary? */
export {
  type AirSpeedCustom,
  airSpeedCustoms,
  airSpeedPeak,
  airSpeedRms,
  type PeakFlowInput,
  type RmsFlowInput,
} from './air-speed.js';
/** Is the air volume of a box given with or without the vent? */
export type { AirVolumeInput } from './air-volume.js';
/** What are the effective length and the acoustic mass of a vent? */
export { acousticMass, effectiveLength, type VentAtFrequency } from './effective-length.js';
/** How long must a vent be for a tuning? */
export { compileLengthForTuning, type LengthForTuningInput, lengthForTuning } from './length-for-tuning.js';
/** How long must a vent be for a tuning if waves travel along it? */
export { compileVentWithWaves, type VentWithWaves, type WaveTube } from './vent-with-waves.js';
/** How is a round vent described? */
export type { BendInput } from './bend.js';
export type { RoundVentInput, RoundVentSection } from './round-vent.js';
/** How can a slot lie, and which of its boards are panels of the box? */
export { type SlotAlong, slotAlongs, slotBoards } from './slot-boards.js';
/** How is a slot described, and how is a vent of either shape? */
export type { SlotVentInput, SlotVentSection } from './slot-vent.js';
export type { VentInput, VentSection } from './vent-input.js';
/** What do the printers build that vents are usually printed with? */
export { usualPrinters } from './usual-printers.js';
/** To which frequency do several vents tune a box, and how do they share the flow? */
export { type SeveralVents, type SeveralVentsInput, severalVents, type VentShare } from './several-vents.js';
/** At what frequencies does a vent have standing waves, and how sharp are they? */
export { type StandingWave, type StandingWavesInput, standingWaves } from './standing-waves.js';
/** To which frequency does a vent tune a box? */
export { type Tuning, type TuningInput, tuning } from './tuning.js';
/** What is the admittance of a vent as a lossy line in a network? */
export { compileVentAdmittance, compileVentMouth, type VentLineInput } from './vent-line.js';
/** Which flare suits a vent of a given length best? */
export { type FlareForLength, type FlareForLengthInput, type FlaredTube, flareForLength } from './flare-for-length.js';
/** How much does the air lose that swings in a vent? */
export { type LossPart, type VentLoss, type VentLossInput, ventLoss } from './vent-loss.js';
/** Between which speeds is it doubtful whether one or several vents are heard? */
export { type OnsetReached, type OnsetSpan, onsetSpan, type SharedOpening } from './onset-span.js';
/** From which speed on may a vent be heard? */
export type { NoiseOnset, OnsetAt } from './onset.js';
export {
  noiseOnsets,
  onsetSpeed,
  openingOf,
  type VentNoise,
  type VentNoiseInput,
  ventNoise,
} from './noise-onset.js';
