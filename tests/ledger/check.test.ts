import { describe, expect, test } from 'vitest';
import { type Check, evaluate } from './check.js';
import { isLoose, isOutside } from './row.js';

const square = {
  formula: 'numeric/square',
  source: { key: 'own', locator: 'x times x' },
  status: 'derived',
  kind: 'identity',
  given: { x: { value: [1, 2, 3], unit: '1' } },
  got: ({ x }: { x: number }) => x * x,
  expected: [1, 4, 9],
  unit: '1',
  tolerance: { absolute: 0, why: 'whole numbers' },
} satisfies Check<{ x: { value: number[]; unit: string } }>;

describe('a row of the ledger', () => {
  test('runs over the elements and keeps the worst deviation', () => {
    const row = evaluate('id', { ...square, expected: [1, 5, 9], tolerance: { relative: 0.1, why: 'shown to fail' } });
    expect(row).toMatchObject({ got: [1, 4, 9], deviation: 0.2, passed: false });
  });

  test('hands single values to every element, and names as they are', () => {
    const given = { x: { value: [1, 2], unit: 'm' }, y: { value: 10, unit: 'm' }, of: { value: 'sum', unit: '' } };
    const got = (g: { x: number; y: number; of: string }) => (g.of === 'sum' ? g.x + g.y : 0);
    expect(evaluate('id', { ...square, given, got, expected: [11, 12] }).passed).toBe(true);
  });

  test('takes a list from one call when nothing given is a list', () => {
    const row = evaluate('id', {
      ...square,
      given: { order: { value: 2, unit: '1' } },
      got: ({ order }) => Float64Array.of(1, order),
      expected: [1, 2],
    });
    expect(row).toMatchObject({ got: [1, 2], passed: true });
  });

  test.each([
    ['NaN', { got: () => Number.NaN }, /got NaN/],
    ['an expected infinity', { expected: [1, 4, Number.POSITIVE_INFINITY] }, /expected Infinity/],
    ['too few expected values', { expected: [1, 4] }, /3 results against 2/],
    ['one expected value for many', { expected: 1 }, /3 results against 1/],
    ['a tolerance relative to zero', { expected: [0, 4, 9], tolerance: { relative: 1, why: 'any' } }, /relative/],
    ['a tolerance without a reason', { tolerance: { absolute: 1, why: ' ' } }, /reason/],
    ['a tolerance that is no size', { tolerance: { absolute: Number.NaN, why: 'any' } }, /not a size/],
    ['an unknown source', { source: { key: 'nobody1900', locator: 'p. 1' } }, /nobody1900/],
    ['no source for an outside kind', { kind: 'table' as const }, /'own' is not in references/],
    ['no locator', { source: { key: 'own', locator: '' } }, /where/],
  ])('refuses %s', (_, change, message) => {
    expect(() => evaluate('id', { ...square, ...change } as typeof square)).toThrow(message);
  });

  test('is loose when a hundred times its deviation would pass', () => {
    const row = (relative: number, deviation: number) => ({ tolerance: { relative, why: 'shown' }, deviation });
    expect([row(1e-3, 2e-5), row(1e-6, 0)].map(isLoose)).toEqual([false, false]);
    expect([row(1e-3, 5e-6), row(1e-5, 0)].map(isLoose)).toEqual([true, true]);
  });

  test('is outside only by kind and status together', () => {
    expect(isOutside({ kind: 'table', status: 'seen' })).toBe(true);
    expect(isOutside({ kind: 'table', status: 'memory' })).toBe(false);
    expect(isOutside({ kind: 'own', status: 'derived' })).toBe(false);
  });
});
