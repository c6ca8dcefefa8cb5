/** What is a Bessel function of the first kind of a real number? */
export { besselJ0, besselJ1 } from './bessel-j.js';
/** What are the quotients of Bessel functions of a complex number? */
export { besselQuotients } from './bessel-quotients.js';
/** What solves a complex linear system, or its transposed, and how near is it to singular? */
export { factorComplexMatrix, solveComplexFactored, solveComplexFactoredTransposed } from './complex-linear-system.js';
/** What is the integral of a function over a range? */
export { integral } from './integral.js';
/** What solves a real linear system, and how near is it to singular? */
export { factorMatrix, solveFactored } from './linear-system.js';
/** How does a linear system of differential equations move in one step of time? */
export { matrixExponential } from './matrix-exponential.js';
/** Where between two ends is a function least? */
export { boundedMinimum, type Minimum } from './minimise.js';
/** Where exactly is a smooth function least, next to the least of its samples? */
export { smoothMinimum } from './smooth-minimum.js';
/** Where within bounds is a function of several variables least? */
export { type SimplexMinimum, type SimplexOptions, simplexMinimum } from './minimise-simplex.js';
/** What is a polynomial times, plus, or differentiated, and what is it worth at jω? */
export {
  polynomialColumnOnImaginaryAxis,
  polynomialDerivative,
  polynomialOnImaginaryAxis,
  polynomialProduct,
  polynomialSum,
} from './polynomial.js';
/** Where does a real polynomial vanish? */
export { polynomialRoots, type Roots } from './polynomial-roots.js';
/** Is what is left of a sum anything but rounding? */
export { isRounding } from './rounding.js';
/** Which numbers sample a range, by chance from a seed or evenly? */
export { evenPoints, randomNumbers } from './random.js';
/** Where does a function or a column change sign? */
export { type BracketedRoot, bracketedRoot, signChanges } from './root-bracket.js';
/** Which numbers divide a range in equal ratios or steps? */
export { linear, logarithmic } from './spacing.js';
/** What is a Struve function of a real number? */
export { struveH0, struveH1 } from './struve-h.js';
/** How are complex values over frequency kept? */
export { type ComplexColumn, complexColumn } from './complex-column.js';
/** What does a polynomial add to a group delay? */
export { logarithmicSlope } from './logarithmic-slope.js';
/** Which cell of a lattice is best, over all of it? */
export { type Found, survey } from './survey.js';
/** Where does a walk downhill on whole numbers end? */
export { descend } from './descend.js';
/** Which of several conditions cannot hold together? */
export { minimalConflict } from './minimal-conflict.js';
