import {
  factorComplexMatrix,
  factorMatrix,
  solveComplexFactored,
  solveComplexFactoredTransposed,
  solveFactored,
} from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import { fixtures, worst } from './fixtures.js';

const columns = (part: readonly number[]) => Float64Array.from(part);

test.each(fixtures.systems)('complex system of $n, two right-hand sides, and its transposed', (system) => {
  const { n } = system;
  const [re, im, exchanges] = [columns(system.a.re), columns(system.a.im), new Int32Array(n)];
  expect(factorComplexMatrix(n, re, im, exchanges)).toBeGreaterThan(1e-3);
  for (const [solve, x] of [
    [solveComplexFactored, system.x],
    [solveComplexFactoredTransposed, system.transposed],
  ] as const) {
    const [bRe, bIm] = [columns(system.b.re), columns(system.b.im)];
    solve(n, re, im, exchanges, bRe, bIm, 2);
    const size = (i: number) => Math.hypot(x.re[i]!, x.im[i]!);
    expect(worst(bRe, x.re, size)).toBeLessThan(1e-12);
    expect(worst(bIm, x.im, size)).toBeLessThan(1e-12);
  }
});

test.each(fixtures.systems)('real system of $n', (system) => {
  const { n } = system;
  const [a, b, exchanges] = [columns(system.a.re), columns(system.b.re), new Int32Array(n)];
  expect(factorMatrix(n, a, exchanges)).toBeGreaterThan(1e-3);
  solveFactored(n, a, exchanges, b, 2);
  expect(worst(b, system.real)).toBeLessThan(1e-11);
});
