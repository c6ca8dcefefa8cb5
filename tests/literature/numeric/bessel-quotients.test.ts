import { besselQuotients } from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import rows from './bessel-quotients.json' with { type: 'json' };

const out = new Float64Array(4);

test('J1/J0 and J2/J0 agree with 60-digit arithmetic over the plane', () => {
  const errors = rows.map((row) => {
    const [re, im, ...expected] = row as [number, number, number, number, number, number];
    besselQuotients(re, im, out);
    return [0, 2].map((at) => {
      const [a, b] = [expected[at]!, expected[at + 1]!];
      return Math.hypot(out[at]! - a, out[at + 1]! - b) / Math.hypot(a, b);
    });
  });
  expect(Math.max(...errors.flat())).toBeLessThan(2e-14);
});

test('along the diagonal, where J overflows, the quotients go to −j and −1', () => {
  besselQuotients(1e9, -1e9, out);
  expect(Math.hypot(out[0]!, out[1]! + 1)).toBeLessThan(1e-9);
  expect(Math.hypot(out[2]! + 1, out[3]!)).toBeLessThan(3e-9);
});
