/** How can a duct widen at its ends? */
export { ellipticFlare, exponentialFlare, type Flare, type FlareSizes, roundFlare } from './flare.js';
export { type FlarePoint, flareThrough } from './flare-through.js';
/** Which solid is a printed vent? */
export { type VentSolid, ventSolid } from './vent-solid.js';
export type { VentDrawing } from './vent-drawing.js';
export type { BendAfterInput, FlangeInput, ScrewsInput, VentSolidInput } from './vent-solid-input.js';
/** How much air does a flare of any profile add to a duct? */
export { flareEnd } from './flare-end.js';
/** Which tuning does the printed part have? */
export { type Airway, airwayOf } from './airway.js';
export { type PrintedTuning, type PrintedTuningInput, printedTuning } from './printed-tuning.js';
/** How is a vent built whose tube is swapped when the tuning changes? */
export { type TwoPartVent, type TwoPartVentInput, twoPartVent } from './two-part-vent.js';
/** Which pieces of a vent fit a printer? */
export {
  type PrinterInput,
  type TubeSegmentsInput,
  tubeSegments,
  type VentSegments,
  type VentSegmentsInput,
  ventSegments,
} from './vent-segments.js';
/** Which of the saws at hand makes the hole? */
export { type HoleBySaw, type HoleBySawInput, holeBySaw } from './hole-saw.js';
/** Which solid seals the frame of a driver? */
export { type DriverGasket, type DriverGasketInput, driverGasket, type FrameBoltsInput } from './driver-gasket.js';
/** Which discs weigh what a passive radiator needs? */
export { type MassDiscs, type MassDiscsInput, massDiscs } from './mass-discs.js';
/** Which solid holds the terminals? */
export { type TerminalCup, type TerminalCupInput, terminalCup } from './terminal-cup.js';
