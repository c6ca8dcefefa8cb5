import type { Field } from '../quantity/index.js';

/** The narrowest solid angle that is accepted, sr. */
const NARROWEST = 1e-3;

/** A solid angle of the full sphere at most. */
export const solidAngleField: Field<number> = {
  optional: false,
  read: (faults, value, path) => {
    // A hair above 4π is rounding.
    if (typeof value === 'number' && value >= NARROWEST && value <= 4 * Math.PI * (1 + 1e-12)) return value;
    const code = typeof value === 'number' && Number.isFinite(value) ? 'out-of-range' : 'not-finite';
    const remedy = 'Give 2π for half space, or one of solidAngles.';
    faults.push({ code, path, got: value, expected: `a solid angle of ${NARROWEST} to 4π sr`, remedy });
    return undefined;
  },
};
