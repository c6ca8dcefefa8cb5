import { minimalConflict } from '@airspring/core/numeric';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';

const conflicts = (count: number) =>
  fc.array(fc.uniqueArray(fc.integer({ min: 0, max: count - 1 }), { minLength: 1, maxLength: 7 }), {
    minLength: 1,
    maxLength: 6,
  });

const possibleOf = (list: readonly (readonly number[])[]) => (set: readonly number[]) =>
  !list.some((conflict) => conflict.every((i) => set.includes(i)));

test.prop([conflicts(10)])('of few conditions it is one with the fewest members', (list) => {
  const found = minimalConflict(10, possibleOf(list))!;
  expect(list.some((conflict) => conflict.every((i) => found.includes(i)))).toBe(true);
  expect(found.length).toBe(Math.min(...list.map((conflict) => conflict.length)));
});

test.prop([conflicts(120)])('of many conditions it cannot hold, and can without any one of its members', (list) => {
  const possible = possibleOf(list);
  const found = minimalConflict(120, possible)!;
  expect(possible(found)).toBe(false);
  for (const left of found) expect(possible(found.filter((i) => i !== left))).toBe(true);
});
