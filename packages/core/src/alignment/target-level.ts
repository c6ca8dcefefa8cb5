import { polynomialOnImaginaryAxis } from '../numeric/index.js';

/** The numerator of a response: its coefficients in ascending powers of s, or the power that stands alone. */
export type Numerator = ArrayLike<number> | number;

/** Level of a target, dB, at a frequency in the unit of the target. That of a high-pass is counted from its end far above. */
export type LevelOfTarget = (denominator: readonly number[], x: number, numerator?: Numerator) => number;

/** Prepares the level of targets: a call of what it returns allocates nothing. The numerator is by default that of a high-pass. */
export function compileLevelOfTarget(): LevelOfTarget {
  const value = new Float64Array(2);
  const squaredSize = (coefficients: ArrayLike<number>, x: number): number => {
    polynomialOnImaginaryAxis(coefficients, x, value);
    return value[0]! ** 2 + value[1]! ** 2;
  };
  return (denominator, x, numerator = denominator.length - 1) => {
    const over = denominator[denominator.length - 1]! ** 2 / squaredSize(denominator, x);
    if (typeof numerator === 'number') return 10 * Math.log10(over) + 20 * numerator * Math.log10(x);
    return 10 * Math.log10(over * squaredSize(numerator, x));
  };
}
