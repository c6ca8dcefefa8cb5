/** What are the properties of air at a given temperature, humidity, and pressure or altitude? */
export { type Air, type AirConditions, air, standardAir, standardConditions } from './air.js';
/** How is a medium described by your own numbers, and do they agree? */
export { type CustomAirInput, customAir } from './custom-air.js';
/** Is a record a valid medium? */
export { airField, readAir } from './read-air.js';
/** How dense is moist air? */
export { moistAirDensity } from './density.js';
/** How is the state of moist air given? */
export { carbonDioxideFraction, type MoistAirInput } from './moist-air.js';
/** How fast does sound travel in moist air and in dry air? */
export { type DryAirInput, dryAirSpeedOfSound } from './dry-air-speed-of-sound.js';
export { speedOfSound } from './speed-of-sound.js';
/** What are the mean pressure and temperature at an altitude? */
export { type StandardAtmosphere, standardAtmosphere } from './standard-atmosphere.js';
/** How viscous is air, and how well does it conduct heat? */
export { thermalConductivity } from './thermal-conductivity.js';
export { viscosity } from './viscosity.js';
/** How much of the air is water vapour? */
export { waterVapourFraction } from './water-vapour.js';
