import type { Fault } from '../fault/index.js';
import { type DisplacementPeakInput, positive } from '../quantity/index.js';

/** A curve over the displacement of the cone, outwards positive, and how far it was measured. */
export interface TravelCurve {
  /** Coefficients in ascending powers of the displacement in metres: Bl in T·m, or stiffness in N/m, per power. */
  readonly coefficients: readonly number[];
  /** The curve holds from −upTo to upTo. */
  readonly upTo: DisplacementPeakInput;
}

const coefficientsField = {
  optional: false as const,
  read: (faults: Fault[], value: unknown, path: string): readonly number[] | undefined => {
    const list = Array.isArray(value) ? value : [];
    const bad = list.findIndex((one) => !Number.isFinite(one));
    if (list.length > 0 && list.length <= 16 && bad < 0 && list[0] > 0) return list;
    const expected = 'one to 16 finite coefficients, the first above zero';
    const code =
      list.length === 0 ? 'empty' : bad >= 0 ? 'not-finite' : list.length > 16 ? 'out-of-range' : 'not-positive';
    const remedy = 'List them from the constant term up: [12, 0, -9e4].';
    faults.push({ code, path, got: bad >= 0 ? list[bad] : (list[0] ?? value), expected, remedy });
    return undefined;
  },
};

/** How a {@link TravelCurve} is read. */
export const travelCurveShape = { coefficients: coefficientsField, upTo: positive('displacementPeak') };
