import { complexColumn } from './complex-column.js';
import { polynomialColumnOnImaginaryAxis, polynomialDerivative } from './polynomial.js';

/** Re(P′/P) on the imaginary axis, the contribution of a polynomial to a group delay. It is 0 at a zero of P, where the phase jumps. */
export function logarithmicSlope(polynomial: Float64Array, omega: Float64Array): Float64Array {
  const value = complexColumn(omega.length);
  const slope = complexColumn(omega.length);
  polynomialColumnOnImaginaryAxis(polynomial, omega, value.re, value.im);
  polynomialColumnOnImaginaryAxis(polynomialDerivative(polynomial), omega, slope.re, slope.im);
  return value.re.map((re, i) => {
    const im = value.im[i]!;
    const size = re * re + im * im;
    return size > 0 ? (slope.re[i]! * re + slope.im[i]! * im) / size : 0;
  });
}
