import type { Fault } from '../fault/index.js';
import { type AngleInput, count, type Fields, type LengthInput, optional, positive } from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';

/** One bend of a vent, or several equal ones. */
export interface BendInput {
  /** Angle of the bend. */
  readonly angle: AngleInput;
  /** Radius of the bend on the centre line of the tube. */
  readonly centreLineRadius: LengthInput;
  /** Number of such bends, 1 to 20; default 1. A folded vent has several. */
  readonly count?: number | undefined;
}

export const bendShape = {
  angle: positive('angle'),
  centreLineRadius: positive('length'),
  count: optional(count(20)),
};

type Bend = Fields<typeof bendShape> | undefined;

/** Length and curvature of the bends of a vent. */
export interface BendGeometry {
  /** Centre-line length of all bends, m; 0 for a straight vent. */
  readonly bendLength: number;
  /** Centre-line radius of a bend over half the width in its plane; infinite for a straight vent. */
  readonly bendRatio: number;
}

export const bendGeometry = (bend: Bend, halfWidth: number): BendGeometry =>
  bend === undefined
    ? { bendLength: 0, bendRatio: Number.POSITIVE_INFINITY }
    : {
        bendLength: (bend.count ?? 1) * bend.angle * bend.centreLineRadius,
        bendRatio: bend.centreLineRadius / halfWidth,
      };

/** The fault of a bend so sharp that its inside would have no radius. */
export function sharpBendFaults(bend: Bend, least: number, what = 'the outer radius of the tube'): Fault[] {
  if (bend === undefined || bend.centreLineRadius >= least - NANOMETRE) return [];
  const expected = `at least ${what}, ${least} m`;
  const path = 'vent.bend.centreLineRadius';
  return [{ code: 'inconsistent', path, got: bend.centreLineRadius, expected, remedy: 'Bend it less sharply.' }];
}
