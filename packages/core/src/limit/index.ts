/** How loud can a system play at each frequency, and what gives out first? */
export { type GreatestLevel, greatestDrive, greatestLevel } from './greatest-level.js';
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
/** Where does a vent fit that keeps an air speed? */
export { type VentCell, type VentMapInput, type VentVerdict, ventMap } from './vent-map.js';
/** Between which levels is it doubtful whether a vent is heard? */
export { type OnsetColumns, type VentOnsetOptions, type VentOnsets, ventOnsets } from './vent-onsets.js';
/** How far and how fast may the air in a vent move that stays quiet? */
export { type QuietOptions, quietLimits } from './quiet-limits.js';
