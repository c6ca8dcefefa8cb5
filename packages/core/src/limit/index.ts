/** How loud can a system play at each frequency, and what gives out first? */
export { type GreatestLevel, greatestDrive, greatestLevel } from './greatest-level.js';
/** How does the greatest level change with every number of the network? */
export {
  type GreatestLevelGradient,
  type GreatestLevelGradientOptions,
  greatestLevelGradient,
  leastGreatestLevelGradient,
} from './greatest-level-gradient.js';
/** At which frequencies does another limit begin to bind? */
export { type LimitChange, limitChanges } from './limit-changes.js';
/** What can give out in a system? */
export {
  airSpeedLimit,
  currentLimit,
  heatLimit,
  type Limit,
  radiatorTravelLimit,
  travelLimit,
  voltageLimit,
} from './limit.js';
/** What can give out where there are different drivers and several vents? */
export { limitsOfEach } from './limits-of-each.js';
/** Below which frequency is a drive too much for a system? */
export { lowestSafeFrequency } from './lowest-safe-frequency.js';
/** Which high-pass keeps every limit, and costs the least depth? */
export { gentlestHighPass, type ProtectiveFilter, type ProtectiveFilters } from './gentlest-high-pass.js';
export type { ProtectionInput } from './protection-input.js';
/** Where does a quiet vent fit? */
export { type VentCell, type VentVerdict, ventMap } from './vent-map.js';
export type { VentMapInput } from './vent-map-input.js';
/** Between which levels is it doubtful whether a vent is heard? */
export { type OnsetColumns, type VentOnsetOptions, type VentOnsets, ventOnsets } from './vent-onsets.js';
/** How far and how fast may the air in a vent move that stays quiet? */
export { type QuietOptions, quietLimits } from './quiet-limits.js';
/** How does the coil of a driver warm up, and what is its resistance then? */
export {
  greatestCoilRise,
  hotResistance,
  type ThermalModel,
  type ThermalModelInput,
  thermalModel,
} from './thermal-model.js';
/** How hot are coil and magnet after a time of constant heat? */
export { type TemperatureRise, temperatureAfter } from './temperature-after.js';
/** How hot does the coil become at a drive, and how much level does that cost? */
export { respondWithHeat, type WithHeat, type WithHeatOptions } from './respond-with-heat.js';
/** Which current heats the coil to a temperature? */
export { coilTemperatureLimit } from './coil-temperature-limit.js';
/** How far may the cone move by the curves of its motor and suspension, and before it is damaged? */
export { damageLimit, motorTravelLimit, suspensionTravelLimit } from './curve-limits.js';
export type { TravelCurve } from './travel-curve.js';
/** In which states can a system swing at a drive, if Bl or stiffness depend on the travel? */
export { type Branch, type BranchesAtFrequency, type BranchesOptions, branchesAtLevel } from './branches-at-level.js';
/** How hot does the output stage of an amplifier become? */
export { type AmplifierHeat, amplifierHeat, classBHeat } from './amplifier-heat.js';
/** How loud can a system play if its losses are counted, and what gives out first? */
export {
  type GreatestLevelWithLosses,
  greatestLevelWithLosses,
  type WithLossesOptions,
} from './greatest-level-with-losses.js';
/** What is played, as a spectrum and a crest factor? */
export { type Programme, type ProgrammeInput, pinkProgramme, programme } from './programme.js';
/** How hot does a programme make the coil, and how much level does that cost? */
export { type ProgrammeHeat, programmeHeat } from './programme-heat.js';
/** How loud may a programme be played, and what gives out first? */
export { type GreatestProgrammeLevel, greatestProgrammeLevel } from './greatest-programme-level.js';
