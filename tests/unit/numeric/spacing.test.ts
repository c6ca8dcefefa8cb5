import { linear, logarithmic } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

test('ends exact, ratios and steps equal', () => {
  expect([...linear(0, 1, 3)]).toEqual([0, 0.5, 1]);
  const f = logarithmic(10, 1000, 201);
  expect([f[0], f[200]]).toEqual([10, 1000]);
  expect(f[100]).toBeCloseTo(100, 12);
  expect(Math.max(...Array.from(f.slice(1), (v, i) => Math.abs(v / f[i]! - 10 ** 0.01)))).toBeLessThan(1e-14);
  expect(logarithmic(1e-300, 1e300, 3)[1]).toBeCloseTo(1, 12);
  expect(linear(-1e308, 1e308, 3)[1]).toBe(0);
});

test('refuses with every fault', () => {
  expect(() => logarithmic(0, -1, 1.5)).toThrowError(
    expect.objectContaining({
      faults: ['not-positive', 'not-positive', 'unsorted', 'out-of-range'].map((code) =>
        expect.objectContaining({ code }),
      ),
    }),
  );
  expect(() => linear(Number.NaN, 1, 1e12)).toThrowError(/from.*\n.*count/);
});
