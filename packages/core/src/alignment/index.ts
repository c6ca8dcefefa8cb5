/** What is an alignment type, as a value? */
export type { Alignment, FreeParameter, Goal, TargetPolynomial } from './alignment.js';
/** In which box does a driver have the response of an alignment? */
export type { AlignmentOptions } from './options.js';
export type { Aligned, AlignmentResult } from './aligned.js';
export { solveAlignment } from './solve.js';
/** How far is a response from its target, and what of it is to be small? */
export type { ComparedBand, Deviation } from './deviation.js';
export { greatestDifference, type Norm, rootMeanSquare } from './least-deviation.js';
/** Which shape is maximally flat? */
export { butterworth } from './butterworth.js';
/** Which shape has ripple, and which droops? */
export { chebyshev, subChebyshev } from './chebyshev.js';
/** Which shape is nearly flat, of a driver that decides it? */
export { quasiThirdOrder } from './quasi-third-order.js';
/** Which shape rings little? */
export { bessel } from './bessel.js';
/** Which shape is the steepest without ripple? */
export { legendre } from './legendre.js';
/** Which shape lies between two orders? */
export { interOrder } from './inter-order.js';
/** Which shapes are two equal sections? */
export { boomBox, linkwitzRiley, superBoomBox } from './boom-box.js';
/** Which shape falls to a shelf before it falls away? */
export { lowShelf } from './low-shelf.js';
/** Which shape passes a band? */
export { type BandPassOptions, bandPass } from './band-pass.js';
export { type SixthOrderBandPassOptions, sixthOrderBandPass } from './sixth-order-band-pass.js';
/** Which shape has stated parameters? */
export { fixedAt } from './fixed-at.js';
/** Which shape has a chosen damping? */
export { criticallyDamped, ofTotalQ } from './damped.js';
/** Which boxes suit a driver? */
export { boxesThatSuit, type Candidate, candidate, type Suited } from './suits.js';
/** Which drivers suit an alignment? */
export { type DriverRow, type DriversFor, driversFor } from './drivers-for.js';
/** How good are the rules of thumb for a vented box? */
export {
  type ApproximationError,
  approximationErrors,
  margolisSmall,
  type VentedApproximation,
  type VentedNumbers,
} from './approximation.js';
/** Which alignment does a response come near to? */
export { type Nearness, nearestAlignments } from './nearest.js';
