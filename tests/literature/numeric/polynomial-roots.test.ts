import { polynomialRoots } from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import { fixtures } from './fixtures.js';

/** Sensitivity of a root to relative changes of the coefficients: what double precision can know of it. */
function condition(c: readonly number[], x: number, y: number): number {
  const r = Math.hypot(x, y);
  let [sum, dr, di] = [0, 0, 0];
  c.forEach((a, k) => {
    sum += Math.abs(a) * r ** k;
    if (k === 0) return;
    const phase = Math.atan2(y, x) * (k - 1);
    dr += k * a * r ** (k - 1) * Math.cos(phase);
    di += k * a * r ** (k - 1) * Math.sin(phase);
  });
  return sum / (Math.hypot(dr, di) * r);
}

test.each(fixtures.polynomials)('roots: $name', ({ coefficients, roots }) => {
  const { re, im, converged } = polynomialRoots(coefficients);
  expect(converged).toBe(true);
  expect(re.length).toBe(roots.length);
  for (const [x = 0, y = 0] of roots) {
    const nearest = Math.min(...re.map((_, i) => Math.hypot(re[i]! - x, im[i]! - y)));
    expect(nearest / Math.hypot(x, y)).toBeLessThan(8 * Number.EPSILON * Math.max(1, condition(coefficients, x, y)));
  }
});
