import type { Field } from '../quantity/index.js';

/** A power of frequency above 0 and up to `greatest`. */
export const exponent = (greatest: number): Field<number> => ({
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'number' && value > 0 && value <= greatest) return value;
    const code = typeof value !== 'number' ? 'unit' : Number.isFinite(value) ? 'out-of-range' : 'not-finite';
    const expected = `a plain number above 0 and up to ${greatest}`;
    faults.push({ code, path, got: value, expected, remedy: 'Give the power of frequency, such as 0.7.' });
    return undefined;
  },
});
