/** What is the medium, from temperature, humidity, and pressure or altitude? */
export { type Air, type AirConditions, air, standardAir, standardConditions } from './air.js';
/** What is a medium of one's own numbers, and do they agree? */
export { type CustomAirInput, customAir } from './custom-air.js';
/** Is this a medium? */
export { airField, readAir } from './read-air.js';
/** How heavy is moist air? */
export { moistAirDensity } from './density.js';
/** In which state is the air, and which states are accepted? */
export { carbonDioxideFraction, type MoistAirInput } from './moist-air.js';
/** How fast does sound travel, by the default formula and by the one of the standard? */
export { type DryAirInput, dryAirSpeedOfSound } from './dry-air-speed-of-sound.js';
export { speedOfSound } from './speed-of-sound.js';
/** Which pressure and temperature belong to an altitude? */
export { type StandardAtmosphere, standardAtmosphere } from './standard-atmosphere.js';
/** How viscous is air, and how well does it conduct heat? */
export { thermalConductivity } from './thermal-conductivity.js';
export { viscosity } from './viscosity.js';
/** How much of the air is water vapour? */
export { waterVapourFraction } from './water-vapour.js';
