import { minimalConflict } from '@airspring/core/numeric';
import { describe, expect, test } from 'vitest';

/** Conditions of which some sets cannot hold, and how often they were asked. */
function conditions(conflicts: readonly (readonly number[])[]) {
  const told = { asked: 0, possible: (_set: readonly number[]): boolean => true };
  told.possible = (set) => {
    told.asked++;
    expect([...set].sort((a, b) => a - b)).toEqual(set);
    return !conflicts.some((conflict) => conflict.every((i) => set.includes(i)));
  };
  return told;
}

const conflictOf = (count: number, ...conflicts: number[][]) => minimalConflict(count, conditions(conflicts).possible);

describe('the fewest conditions that cannot hold together', () => {
  test.each([
    ['none, where all can', conflictOf(3), undefined],
    ['none, where there are none', conflictOf(0), undefined],
    ['the empty set, where nothing at all can', conflictOf(3, []), []],
    ['one', conflictOf(5, [1, 2], [3]), [3]],
    ['of two as few, that of the lowest numbers', conflictOf(6, [0, 5], [1, 3], [0, 2, 4]), [1, 3]],
    [
      'the fewest of fourteen, however many',
      conflictOf(14, [0, 1, 2, 3, 4, 5, 6, 7], [1, 3, 5, 7, 9, 11, 13]),
      [1, 3, 5, 7, 9, 11, 13],
    ],
    ['the fewest of 25, up to four', conflictOf(25, [0, 1, 2, 3, 4], [16, 17, 18, 19]), [16, 17, 18, 19]],
    ['the fewest of 46, up to three', conflictOf(46, [0, 1, 2, 3], [43, 44, 45]), [43, 44, 45]],
    ['the fewest of 180, up to two', conflictOf(180, [0, 1, 2], [170, 179]), [170, 179]],
  ])('%s', (_, got, expected) => expect(got).toEqual(expected));
});

test.each([
  [33, [0, 8, 16, 24, 32]],
  [64, [31, 32, 33, 62, 63]],
  [200, [3, 64, 127, 128, 199]],
  [200, Array.from({ length: 200 }, (_, i) => i)],
])('of %i conditions a conflict of more members is found by halving', (count, conflict) => {
  const told = conditions([conflict]);
  expect(minimalConflict(count, told.possible)).toEqual(conflict);
  expect(told.asked - 16384).toBeLessThan(2 * conflict.length * (Math.log2(count / conflict.length) + 1) + 2);
});
