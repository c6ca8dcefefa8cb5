import { type Fault, refuse } from '../fault/index.js';
import { unlessWhole } from '../numeric/refusal.js';

/** The greatest order of a filter. */
export const MOST_ORDER = 8;

/**
 * The shape of a filter, apart from its corner: the denominator of a low-pass $1/D(s)$. It is a value; one of your own is used exactly
 * like the ones in this package. The high-pass of the same shape is $1/D(1/s)$.
 */
export interface FilterShape {
  /** As the literature calls it: 'Butterworth'. */
  readonly name: string;
  /**
   * Coefficients in ascending powers of s over the corner, one more than the order. The first is 1, so that the gain far from the
   * corner is 1.
   */
  readonly denominator: readonly number[];
  /** Keys of the bibliography, or words of your own. */
  readonly sources: readonly string[];
}

/** Refuses an order that a shape does not have. */
export const refuseShapeOrder = (order: number, least = 1): void =>
  refuse(unlessWhole('order', order, least, MOST_ORDER));

/** Refuses what is no shape. Whether it is stable is seen once it is a filter. */
export function refuseBadShape(shape: FilterShape): void {
  const list: unknown = shape?.denominator;
  const fail = (code: Fault['code'], got: unknown, expected: string, remedy: string) =>
    refuse([{ code, path: 'shape.denominator', got, expected, remedy }]);
  if (!Array.isArray(list) || list.length < 2)
    fail('empty', list, 'coefficients of order 1 or more', 'Call the function that makes the shape, or list them.');
  const coefficients = list as readonly number[];
  if (coefficients.length > MOST_ORDER + 1)
    fail('out-of-range', coefficients, `an order of at most ${MOST_ORDER}`, 'Use two filters in turn.');
  coefficients.forEach((got, k) => {
    if (Number.isFinite(got) && got > 0) return;
    const code = Number.isFinite(got) ? 'not-positive' : 'not-finite';
    const remedy = 'Check the coefficients: a stable shape has none of another sign.';
    refuse([{ code, path: `shape.denominator[${k}]`, got, expected: 'a finite number above 0', remedy }]);
  });
  if (Math.abs(coefficients[0]! - 1) > 1e-9)
    fail('inconsistent', coefficients, 'a first coefficient of 1', 'Divide all of them by the first.');
}

/** The same shape over another frequency: that at which s is `at`. */
export const rescaled = (denominator: readonly number[], at: number): readonly number[] =>
  denominator.map((value, k) => (value / denominator[0]!) * at ** k);
