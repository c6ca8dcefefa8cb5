/** What is a family of boxes, and a box of it that can be swept? */
export { type Family, kept, type System, systemOf, type Unknown } from './family.js';
/** Which part do all families of direct radiators share? */
export {
  asGroup,
  type DirectRadiator,
  type Drivers,
  directRadiator,
  equivalentDriver,
  setDirectRadiator,
} from './driver-parts.js';
/** What does every box with equal drivers have? */
export { type DrivenInput, type DrivenSpec, totalQ } from './driven.js';
/** What is the acoustic compliance of the air in a box? */
export { boxCompliance } from './box-air.js';
/** What does a driver do in a closed box? */
export { type ClosedBoxInput, type ClosedBoxSpec, closedBox, closedFamily } from './closed-box.js';
/** Where does a driver resonate in a closed box, and how sharply? */
export { type ClosedResonance, closedResonance } from './closed-resonance.js';
/** What does a driver do in a wall, without a box? */
export {
  type InfiniteBaffleInput,
  type InfiniteBaffleSpec,
  infiniteBaffle,
  infiniteBaffleFamily,
} from './infinite-baffle.js';
/** What does a driver do in a line: a quarter-wave pipe or a transmission line? */
export { type LineBoxInput, type LineBoxSpec, lineBox, lineFamily } from './line-box.js';
/** How is a line described, section by section, and where is its opening? */
export type { LineOpeningInput, LineOpeningSpec, LinePartInput, LinePartSpec } from './line-parts.js';
/** What does a driver do in a vented box? */
export {
  type VentedBoxInput,
  type VentedBoxLosses,
  type VentedBoxSpec,
  ventedBox,
  ventedFamily,
} from './vented-box.js';
/** What does a driver do in a vented box when waves travel in its vent? */
export {
  type LineVentedBoxInput,
  type LineVentedBoxSpec,
  type LineVentInput,
  type LineVentSpec,
  lineVentedBox,
  lineVentedFamily,
} from './line-vented-box.js';
/** What does the impedance of a vented box tell about its drivers? */
export { type VentedImpedance, type VentedImpedanceInput, ventedImpedance } from './vented-impedance.js';
export {
  type VentedImpedanceQuality,
  type VentedImpedanceQualityInput,
  ventedImpedanceQuality,
} from './vented-impedance-quality.js';
/** What does it tell where the box loses? */
export {
  type LossyVentedImpedance,
  type LossyVentedImpedanceInput,
  lossyVentedImpedance,
} from './lossy-vented-impedance.js';
/** By which ratios is a vented box compared with an alignment? */
export { type VentedRatios, ventedRatios } from './vented-ratios.js';
/** What does a driver do in a box with passive radiators? */
export {
  type PassiveRadiatorBoxInput,
  type PassiveRadiatorBoxSpec,
  passiveRadiatorBox,
  passiveRadiatorFamily,
} from './passive-radiator-box.js';
/** How much added mass on passive radiators gives a wanted tuning? */
export { type AddedMass, type AddedMassInput, addedMassForTuning } from './passive-radiator-mass.js';
/** To which frequency do passive radiators tune a box? */
export {
  type PassiveRadiatorTuning,
  type PassiveRadiatorTuningInput,
  passiveRadiatorTuning,
  type RadiatorsInput,
  type RadiatorsSpec,
} from './passive-radiator-tuning.js';
/** What does a driver do between a closed chamber and a vented one? */
export {
  type FourthOrderBandPassInput,
  type FourthOrderBandPassSpec,
  fourthOrderBandPass,
  fourthOrderBandPassFamily,
} from './fourth-order-band-pass.js';
/** What does a driver do between two chambers that are both vented to the air outside? */
export {
  type ParallelBandPassInput,
  type ParallelBandPassSpec,
  parallelBandPass,
  parallelBandPassFamily,
} from './parallel-band-pass.js';
/** What does a driver do between two chambers, one of which is vented into the other? */
export {
  type SeriesBandPassInput,
  type SeriesBandPassSpec,
  seriesBandPass,
  seriesBandPassFamily,
} from './series-band-pass.js';
/** What do the chambers of a band-pass box have? */
export type {
  ClosedRearInput,
  ClosedRearSpec,
  FrontChamberInput,
  FrontChamberSpec,
  VentedRearInput,
  VentedRearSpec,
} from './band-pass-chambers.js';
/** What does a capacitor before the drivers of a closed box do? */
export { type CapacitorBoxInput, type CapacitorBoxSpec, capacitorBox, capacitorBoxFamily } from './capacitor-box.js';
/** What does a vent do in a closed box that resists the air? */
export { type AperiodicBoxInput, type AperiodicBoxSpec, aperiodicBox, aperiodicFamily } from './aperiodic-box.js';
/** What does a driver do in a baffle that is open behind? */
export { type OpenBaffleInput, type OpenBaffleSpec, openBaffle, openBaffleFamily } from './open-baffle.js';
/** What do different drivers do together, in one volume or in several? */
export {
  type ChamberSpec,
  type ClosedChamberInput,
  type MixedBoxInput,
  type MixedBoxSpec,
  mixedBox,
  mixedFamily,
  type VentedChamberInput,
} from './mixed-box.js';
/** How are different drivers wired together? */
export { type DriverInNet, type DriverInNetSpec, type DriverNet, type DriverNetSpec, driversOf } from './driver-net.js';
