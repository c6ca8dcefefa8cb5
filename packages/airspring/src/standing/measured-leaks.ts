import type { Fault } from '@airspring/core/fault';
import { USUAL_QL } from '../kind/vented-fields.js';

/** How far ranges reach where a brief does not say how much its box leaks (common practice: boxes that stand have 5 to 10). */
export const LEAST_QL = 5;

/** Leaks of a box whose drivers are known from its impedance: the values hold at `QL`, the ranges from no leak to `least`. */
export interface Leaks {
  readonly QL: number;
  readonly least: number;
  readonly assumed: boolean;
  /** Set where the peak is too high for the leaks that are usually assumed. */
  readonly lessThanUsual?: true;
}

/** The leaks that a brief states, or those that are usual. `possible` tells how much of a leak, 1/QL, the peak leaves. */
export function leaksOf(stated: number | undefined, possible: (leak: number) => number, faults: Fault[]): Leaks {
  const usual = 1 / (stated ?? USUAL_QL);
  const left = possible(usual);
  const less = left < 0.999 * usual;
  if (less && stated !== undefined) {
    const expected = `at least ${(1 / left).toFixed(1)}: more leak would leave a lower peak than was measured`;
    const remedy = 'Leave it out, or measure again.';
    faults.push({ code: 'inconsistent', path: 'box.QL', got: stated, expected, remedy });
  }
  return {
    // The suspension loses something as well: of what the peak leaves the leak has half.
    QL: less ? 2 / left : 1 / usual,
    least: 1 / possible(1 / (stated ?? LEAST_QL)),
    assumed: stated === undefined,
    ...(less && { lessThanUsual: true as const }),
  };
}
