/** What is an alignment type, as a value? */
export type { Alignment, FreeParameter, Goal, TargetPolynomial } from './alignment.js';
/** In which box does a driver have the response of an alignment? */
export { type Aligned, type AlignmentOptions, type AlignmentResult, solveAlignment } from './solve.js';
/** How far is a response from its target, and what of it is to be small? */
export type { Deviation } from './deviation.js';
export { greatestDifference, type Norm, rootMeanSquare } from './least-deviation.js';
/** Which shape is maximally flat? */
export { butterworth } from './butterworth.js';
/** Which shape is nearly flat, of a driver that decides it? */
export { quasiThirdOrder } from './quasi-third-order.js';
