/** What is the value of a Bessel function of the first kind at a real number? */
export { besselJ0, besselJ1 } from './bessel-j.js';
/** What are the quotients of Bessel functions of a complex number? */
export { besselQuotients } from './bessel-quotients.js';
/** How is a complex linear system, or its transpose, solved, and how close to singular is it? */
export { factorComplexMatrix, solveComplexFactored, solveComplexFactoredTransposed } from './complex-linear-system.js';
/** What is the integral of a smooth function over a range? */
export { integral } from './integral.js';
/** How is a real linear system solved, and how close to singular is it? */
export { factorMatrix, solveFactored } from './linear-system.js';
/** How does a linear system of differential equations change over one time step? */
export { matrixExponential } from './matrix-exponential.js';
/** Which numbers of zero or more fit an overdetermined linear system best? */
export { nonNegativeLeastSquares } from './non-negative-least-squares.js';
/** Where between two ends does a function have its minimum? */
export { boundedMinimum, type Minimum } from './minimise.js';
/** Where within bounds does a function of several variables have a minimum? */
export { type SimplexMinimum, type SimplexOptions, simplexMinimum } from './minimise-simplex.js';
/** What are the product, the sum and the derivative of polynomials, and their values at jω? */
export {
  polynomialColumnOnImaginaryAxis,
  polynomialDerivative,
  polynomialOnImaginaryAxis,
  polynomialProduct,
  polynomialSum,
} from './polynomial.js';
/** What are the roots of a real polynomial? */
export { polynomialRoots, type Roots } from './polynomial-roots.js';
/** Is the remainder of a sum more than rounding? */
export { isRounding } from './rounding.js';
/** Which numbers sample a range, at random from a seed or evenly? */
export { evenPoints, randomNumbers, uniformAt } from './random.js';
/** Below which value does a normal variable lie with a given probability? */
export { normalQuantile } from './normal-quantile.js';
/** Where do several functions of as many variables vanish? */
export { type NewtonOptions, type NewtonRoot, newtonRoot } from './newton.js';
/** Where does a function or a column change sign? */
export { type BracketedRoot, bracketedRoot, signChanges } from './root-bracket.js';
/** Which numbers divide a range into equal ratios or equal steps? */
export { linear, logarithmic } from './spacing.js';
/** What is the value of a Struve function at a real number? */
export { struveH0, struveH1 } from './struve-h.js';
/** How are complex values over frequency stored? */
export { type ComplexColumn, complexColumn, complexColumns } from './complex-column.js';
/** How much does a polynomial contribute to a group delay? */
export { logarithmicSlope } from './logarithmic-slope.js';
/** Where does a downhill walk on whole numbers end? */
export { descend, type Found } from './descend.js';
/** Which of several conditions cannot hold together? */
export { minimalConflict } from './minimal-conflict.js';
