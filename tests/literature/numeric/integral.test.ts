import { integral } from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import print from './printed.json' with { type: 'json' };

// Exact values of the calculus; the last one by mpmath with 15 digits.
test.each([
  ['a root at an end', Math.sqrt, 0, 1, 2 / 3],
  ['a quarter circle', (x: number) => Math.sqrt(4 - x * x), 0, 2, Math.PI],
  ['an exponential, backwards', Math.exp, 1, 0, 1 - Math.E],
  ['a pole not far away', (x: number) => 1 / (1 + x) ** 2, 0, 9, 0.9],
  ['a quarter-round flare', (x: number) => (2 - Math.sqrt(1 - x * x)) ** -2, 0, 1, 0.736399858718715],
])('%s', (_, f, from, to, expected) => {
  expect(Math.abs(integral(f, from, to) / expected - 1)).toBeLessThan(1e-13);
});

check('integral.tabled', {
  ...print.integral,
  formula: 'numeric/integral',
  status: 'seen',
  kind: 'table',
  given: {
    f: { value: 'cos(2x − 1.8 sin x)/π', unit: '' },
    from: { value: 0, unit: '1' },
    to: { value: Math.PI, unit: '1' },
  },
  got: ({ from, to }) => integral((x) => Math.cos(2 * x - 1.8 * Math.sin(x)) / Math.PI, from, to),
});
