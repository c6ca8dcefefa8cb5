/** Which inputs matter most, and how much? */
export { type Sensitivity, sensitivity } from './sensitivity.js';
/** How does a number scatter from build to build? */
export { type Distribution, normal, within } from './distribution.js';
/** What do builds of a system do whose numbers scatter? */
export { type Builds, type BuildsKernel, type BuildsOptions, compileBuilds } from './builds.js';
export type { Scatter } from './drawn-network.js';
export type { LimitsOfBuilds } from './loudness-of-builds.js';
/** How far do f3 and level scatter, and which number causes it? */
export type { Band } from './band.js';
export { type Scattered, type ScatterOptions, scatterOf, summaryOf } from './scatter.js';
/** What would easing each limit of an optimum gain? */
export { type ShadowPrices, type Slopes, shadowPrices } from './shadow-prices.js';
/** Which points does no other point better? */
export { tradeOffFront } from './trade-off-front.js';
