import { matrixExponential } from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import { fixtures, worst } from './fixtures.js';
import print from './printed.json' with { type: 'json' };

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

for (const { name, matrix, source, printed, tolerance } of print.exponentials) {
  check(`matrix-exponential.${name}`, {
    formula: 'numeric/matrixExponential',
    source,
    status: 'seen',
    kind: 'example',
    given: { matrix: { value: matrix.join(', '), unit: 'row by row' } },
    got: () => matrixExponential(Math.sqrt(matrix.length), Float64Array.from(matrix), 1),
    printed,
    unit: '1',
    ...(tolerance && { tolerance }),
  });
}
