import { polynomialOnImaginaryAxis } from '../numeric/index.js';

/** Level of a target over its end far above, dB, at a frequency in the unit of the target. */
export type LevelOfTarget = (denominator: readonly number[], x: number) => number;

/** Prepares the level of targets: a call of what it returns allocates nothing. */
export function compileLevelOfTarget(): LevelOfTarget {
  const value = new Float64Array(2);
  return (denominator, x) => {
    const order = denominator.length - 1;
    polynomialOnImaginaryAxis(denominator, x, value);
    return 20 * Math.log10((denominator[order]! * x ** order) / Math.hypot(value[0]!, value[1]!));
  };
}
