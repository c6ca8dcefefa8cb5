import { bracketedRoot, signChanges } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

test.each([
  ['square root of 2', (x: number) => x * x - 2, 0, 2, Math.SQRT2, 12],
  ['cosine against x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607, 12],
  ['triple root', (x: number) => (x - 1) ** 3, -3, 2.7, 1, 160],
  ['a step', (x: number) => (x < 0.3 ? -1 : 1), 0, 1, 0.3, 80],
  ['far from even', (x: number) => Math.exp(x) - 1e-9, -50, 50, Math.log(1e-9), 100],
] as const)('%s', (_, f, low, high, expected, most) => {
  const found = bracketedRoot(f, low, high);
  if (!found.ok) throw new Error('no root');
  expect(found.x).toBeCloseTo(expected, 12);
  expect(found.residual).toBe(f(found.x));
  expect(found.evaluations).toBeLessThan(most);
});

test('says why there is no root', () => {
  expect(bracketedRoot((x) => x * x + 1, -1, 1)).toMatchObject({ ok: false, because: [{ code: 'no-sign-change' }] });
  expect(bracketedRoot(() => Number.NaN, -1, 1)).toMatchObject({ ok: false, because: [{ code: 'no-value' }] });
  expect(() => bracketedRoot((x) => x, 1, Number.NaN, -1)).toThrowError(/tolerance/);
});

test('a change of sign, a zero, and a zero at the end', () => {
  expect(signChanges([-1, 2, 3, -1])).toEqual([0, 2]);
  expect(signChanges([0, 1, 0, -1, -2, 0])).toEqual([0, 2, 5]);
  expect(() => signChanges([])).toThrowError(/at least one number/);
});

test.each([
  ['a step near zero', (x: number) => (x < 1e-200 ? -1 : 1), 0, 1, 1e-200],
  ['a step far below its bracket', (x: number) => (x < 1e-290 ? -1 : 1), 0, 1e300, 1e-290],
  ['a cube with a tiny root', (x: number) => x ** 3 - 1e-300, 0, 1e100, 1e-100],
])('is not given up before the bracket is closed: %s', (_, f, low, high, expected) => {
  const found = bracketedRoot(f, low, high);
  expect(found.ok && found.x / expected).toBeCloseTo(1, 12);
});
