import type { System } from '../enclosure/index.js';

/**
 * The denominator of a high-pass $s^n / D(s)$, or of a band-pass $s^m / D(s)$, in ascending powers of s, over any frequency. All its
 * coefficients are positive, and the last is 1. The first argument is the parameter that is left free; a fixed target does not read
 * it. The second is the numerator of a box that has zeros of its own, for an alignment that says `withZeros`.
 */
export type TargetPolynomial = (parameter: number, numerator?: ArrayLike<number>) => readonly number[];

/** A number of a box that is to be as small as possible, such as its cut-off where the delay is limited. */
export interface Goal {
  readonly least: (system: System) => number;
}

/** A parameter that the driver decides, and the range that it may have. */
export interface FreeParameter {
  readonly from: number;
  readonly to: number;
  /** Names and values for people, such as `{ ripple: 0.5 }` with the ripple in dB. */
  readonly told: (value: number) => Readonly<Record<string, number>>;
}

/**
 * An alignment type: the shape that the response of a box should have, over a frequency of its own. It is a value. One of your
 * own is used exactly like the ones in this package; `alignmentLaws` of `@airspring/core/laws` says what it must obey.
 */
export interface Alignment {
  /** As the literature calls it: `B4`, `QB3`. */
  readonly name: string;
  readonly order: number;
  /**
   * The order of its fall below the band, for a band-pass; the rest of its order is that of the fall above. Left out, it is a
   * high-pass.
   */
  readonly orderBelow?: number;
  /**
   * Whether the shape allows for the zeros of a box, such as the notch of a passive radiator. Its target then takes the numerator of
   * the box, in ascending powers of s over the frequency at which the first coefficient of the denominator is 1 as well as the last.
   * That of a high-pass ends with 1; that of a band-pass has the magnitude 1 at this frequency. Without it, a box with zeros comes
   * as near to the shape as it can.
   */
  readonly withZeros?: true;
  readonly target: TargetPolynomial | Goal;
  /** The parameters that are fixed, by name. */
  readonly parameters: Readonly<Record<string, number>>;
  /** The one parameter that the driver decides. Leave it out where the target is fixed. */
  readonly free?: FreeParameter;
  /** Keys of the bibliography, or words of your own. */
  readonly sources: readonly string[];
}

/** An alignment whose target is a shape. */
export type ShapedAlignment = Alignment & { readonly target: TargetPolynomial };

/** Whether the shape falls above its band as well as below it. */
export const isBandPass = ({ order, orderBelow = order }: Alignment): boolean => orderBelow < order;

/** Whether the target is a number to be made small, and no polynomial. */
export const isGoal = (target: Alignment['target']): target is Goal => typeof target !== 'function';

/** The positive root of an order: square roots, as far as they lead, are quicker than a power. */
function rootOf(value: number, order: number): number {
  let root = value;
  let left = order;
  for (; left % 2 === 0; left /= 2) root = Math.sqrt(root);
  return left === 1 ? root : root ** (1 / left);
}

/**
 * Normalises a denominator so that its first and last coefficients are 1, and fills those between. Returns the frequency that is
 * then 1, in the one that the denominator is given over.
 */
export function normalisedShape(denominator: ArrayLike<number>, order: number, out: Float64Array): number {
  const first = denominator[0]!;
  const scale = rootOf(first / denominator[order]!, order);
  let power = 1;
  for (let k = 1; k < order; k++) {
    power *= scale;
    out[k - 1] = (denominator[k]! * power) / first;
  }
  return scale;
}
