import type { Fault } from '../fault/index.js';

/** No fault, or the fault of a number that must be finite. */
export const unlessFinite = (path: string, got: number): Fault[] =>
  Number.isFinite(got)
    ? []
    : [{ code: 'not-finite', path, got, expected: 'a finite number', remedy: 'Replace NaN or infinity.' }];

/** No fault, or the fault of a number that must be finite and above zero. */
export const unlessPositive = (path: string, got: number): Fault[] =>
  Number.isFinite(got) && got <= 0
    ? [{ code: 'not-positive', path, got, expected: 'a number above 0', remedy: 'Give a value above 0.' }]
    : unlessFinite(path, got);

/** No fault, or the fault of a number that must be whole and within a range. */
export const unlessWhole = (path: string, got: number, least: number, most: number): Fault[] =>
  Number.isInteger(got) && got >= least && got <= most
    ? []
    : [
        {
          code: Number.isFinite(got) ? 'out-of-range' : 'not-finite',
          path,
          got,
          expected: `a whole number from ${least} to ${most}`,
          remedy: 'Give a whole number in that range.',
        },
      ];

/** The faults of a column that must not be empty and must be finite throughout. */
export function unlessFiniteColumn(path: string, column: ArrayLike<number>): Fault[] {
  const remedy = 'Give a list that is not empty.';
  if (column.length === 0) return [{ code: 'empty', path, got: column, expected: 'at least one number', remedy }];
  const faults: Fault[] = [];
  for (let i = 0; i < column.length; i++) {
    if (!Number.isFinite(column[i])) faults.push(...unlessFinite(`${path}[${i}]`, column[i]!));
  }
  return faults;
}

/** No fault, or the fault of what must be a list. */
export const unlessList = (path: string, got: unknown, of: string): Fault[] =>
  Array.isArray(got) ? [] : [{ code: 'empty', path, got, expected: `a list of ${of}`, remedy: 'Give the list.' }];

/** No fault, or the fault of two bounds that must increase. Numbers that are not finite are checked elsewhere. */
export const unlessRising = (path: string, low: number, high: number): Fault[] =>
  low >= high
    ? [{ code: 'unsorted', path, got: high, expected: `more than ${low}`, remedy: 'Give the lower end first.' }]
    : [];
