/** How is the shape of a filter described, apart from its corner? */
export type { FilterShape } from './shape.js';
/** Which shape is maximally flat? */
export { butterworthShape } from './butterworth.js';
/** Which shape rings little? */
export { besselShape } from './bessel.js';
/** Which shape is the steepest with ripple? */
export { chebyshevShape } from './chebyshev.js';
/** Which shape is the steepest without ripple? */
export { legendreShape } from './legendre.js';
/** Of which shape do a low-pass and a high-pass add up to a flat level? */
export { linkwitzRileyShape } from './linkwitz-riley.js';
/** Which shape has sections of given quality factors? */
export { type ShapeByQInput, shapeByQ } from './by-q.js';
/** Which high-pass or low-pass has a shape and a corner? */
export { highPass, lowPass } from './pass.js';
/** Which sections of first and second order make up a filter? */
export { type FilterSection, sectionsOf } from './sections-of.js';
/** Which filter lifts or lowers all that is below a frequency? */
export { type ShelfInput, shelf } from './shelf.js';
/** Which filter gives a closed box another resonance and quality factor? */
export { type PoleShiftInput, poleShift } from './pole-shift.js';
/** How is a response filtered? */
export { compileFilter, type FilterKernel } from './compile.js';
/** How is a filter described? */
export type { Filter } from './filter.js';
/** What is the group delay of a filter? */
export { filterGroupDelay } from './group-delay.js';
/** How much does a filter change the level? */
export { filterLevel } from './level.js';
/** Which denominator has a given squared magnitude? */
export { denominatorOfMagnitude } from './from-magnitude.js';
/** Which digital coefficients make a filter? */
export { type Biquad, biquads, type DigitalFilter } from './biquads.js';
/** How is a response filtered by digital coefficients? */
export { compileBiquads } from './compile-biquads.js';
/** How far is a digital filter from the analog one? */
export { type DigitalDeviation, digitalDeviation } from './digital-deviation.js';
/** What do 32-bit coefficients make of a digital filter? */
export { type DigitalPoles, type SinglePrecision, singlePrecision } from './single-precision.js';
