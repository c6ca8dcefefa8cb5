/** A walk of Newton's method that finds nothing says so, however roughly a root is sought. */
import { newtonRoot } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

test.each([1e-12, 1e-3, 0.1])('where there is no root, none is found within %s', (tolerance) => {
  const noRoot = ([x]: Float64Array, out: Float64Array) => {
    out[0] = x! ** 2 + 0.5;
  };
  expect(newtonRoot(noRoot, [1], { tolerance }).ok).toBe(false);
});

test('a root is found where rounding lets no residual become as small as is asked', () => {
  const rounded = ([x]: Float64Array, out: Float64Array) => {
    out[0] = Math.round(1e11 * (x! - 2)) / 1e11 + 1e-11;
  };
  const { ok, x } = newtonRoot(rounded, [1]);
  expect([ok, x[0]]).toEqual([true, expect.closeTo(2, 9)]);
});
