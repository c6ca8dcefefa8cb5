/** What does a system do in a short shaped tone, and how much distortion does it have? */
export { type BandLevel, type PlayedBurst, playBurst } from './played-burst.js';
export type { BurstOptions } from './burst-options.js';
/** How loud can a short tone be at each frequency, and what gives out first? */
export {
  burstFrequencies,
  type GreatestBurst,
  type GreatestBurstsOptions,
  greatestBursts,
  type NoBurst,
} from './greatest-bursts.js';
/** How much distortion may a short tone have? */
export {
  type DistortionBand,
  type DistortionThresholds,
  narrowerThresholds,
  widerThresholds,
} from './distortion-thresholds.js';
/** How loud are the short tones of a band together? */
export { meanBurstLevel } from './mean-burst-level.js';
