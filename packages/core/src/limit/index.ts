/** How loud at each frequency, and what gives out first? */
export { type GreatestLevel, greatestDrive, greatestLevel } from './greatest-level.js';
/** What can give out? */
export {
  airSpeedLimit,
  currentLimit,
  heatLimit,
  type Limit,
  radiatorTravelLimit,
  travelLimit,
  voltageLimit,
} from './limit.js';
/** What can give out of drivers unlike each other, and of several vents? */
export { limitsOfEach } from './limits-of-each.js';
/** Below which frequency is a drive too much? */
export { lowestSafeFrequency } from './lowest-safe-frequency.js';
