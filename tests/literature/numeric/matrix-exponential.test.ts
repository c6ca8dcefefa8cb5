import { matrixExponential } from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import { fixtures, worst } from './fixtures.js';

test.each(fixtures.exponentials)('exponential: $name over $time', ({ a, time, expected }) => {
  const n = Math.sqrt(a.length);
  const got = matrixExponential(n, a, time);
  // An entry counts against its row: what a state receives from all states.
  const rowMost = (i: number) => {
    const row = Math.floor(i / n) * n;
    return Math.max(...expected.slice(row, row + n).map(Math.abs));
  };
  expect(worst(got, expected, rowMost)).toBeLessThan(1e-12);
});
