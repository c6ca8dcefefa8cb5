import { describe, expect, test } from 'vitest';
import { type Check, evaluate } from './check.js';
import { isLoose, isOutside, standingOf } from './row.js';

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

  test('tells the air of the check, if it is another than the standard one, and nothing else of it', () => {
    const air = { density: 1.18, speedOfSound: 345, viscosity: 1.8e-5 };
    expect(evaluate('id', { ...square, air }).air).toEqual({ density: 1.18, speedOfSound: 345 });
    expect(evaluate('id', square)).not.toHaveProperty('air');
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

  test('says in three words what it rests on, or nothing', () => {
    expect(standingOf({ kind: 'table', status: 'seen' })).toBe('read in print');
    expect(standingOf({ kind: 'program', status: 'derived' })).toBe('recomputed independently');
    expect(standingOf({ kind: 'example', status: 'practice' })).toBe('rule of thumb');
    expect(standingOf({ kind: 'identity', status: 'derived' })).toBeUndefined();
    expect(standingOf({ kind: 'table', status: 'memory' })).toBeUndefined();
  });
});

describe('what was read in print', () => {
  const { expected: _, tolerance: __, ...rest } = square;
  const read = { ...rest, source: { key: 'vigran2008', locator: 'a table' }, status: 'seen', kind: 'table' } as const;
  const print = (...printed: string[]) => evaluate('id', { ...read, printed });

  test('is met within half a unit of the last digit of each value', () => {
    expect(print('1.0', '4.0', '9')).toMatchObject({ passed: true, expected: [1, 4, 9], printed: ['1.0', '4.0', '9'] });
    expect(print('1.0', '4.1', '9').passed).toBe(false);
    expect(print('1.04', '4.0', '9.3')).toMatchObject({ passed: false, tolerance: { absolute: 0.005 } });
    expect(print('10e-1', '4', '0.9e1').passed).toBe(true);
  });

  test('is told by the element that uses most of what its own print allows', () => {
    expect(print('1.0001', '4.0', '8.7')).toMatchObject({
      passed: false,
      deviation: expect.closeTo(0.3),
      tolerance: { absolute: 0.05 },
    });
    expect(print('1.00004', '4.0', '9.02')).toMatchObject({
      passed: false,
      tolerance: { absolute: expect.closeTo(5e-6, 12) },
    });
  });

  test('says more than a 1 or a 0 alone, or is held to a tolerance', () => {
    expect(() => print('1', '4', '9')).toThrow(/half a unit of '1' is too much/);
    expect(() => print('1.0', '4', '0')).toThrow(/half a unit of '0' is too much/);
  });

  test('was read in the source itself, or in what quotes it', () => {
    const of = (source: { key: string; locator: string; readIn?: string }) =>
      evaluate('id', { ...read, source, printed: ['1.0', '4.0', '9.0'] }).source.readIn;
    expect(of({ key: 'vigran2008', locator: 'p. 1' })).toBe('itself');
    expect(of({ key: 'ward1977', locator: 'p. 1' })).toBe('the tests of a numerical library');
    expect(of({ key: 'ward1977', locator: 'p. 1', readIn: 'itself' })).toBe('itself');
    expect(() => of({ key: 'dlmf', locator: 'p. 1' })).toThrow(/where dlmf was read/);
    expect(evaluate('id', square).source.readIn).toBeUndefined();
  });

  test('asks no more than double precision of many digits', () => {
    const row = print('1.00000000000000005', '4.00000000000000009', '9.00000000000000001');
    expect(row).toMatchObject({ passed: true, tolerance: { relative: 1e-14 } });
  });

  test('may be missed by more, with a reason, where a value needs it', () => {
    const tolerance = { absolute: 0.1, why: 'the print rounds twice' };
    expect(evaluate('id', { ...read, printed: ['1.0', '4.1', '9'], tolerance }).passed).toBe(true);
    expect(() => evaluate('id', { ...read, printed: ['1.0', '4.0', '9'], tolerance })).toThrow(/no wider/);
    const exact = { absolute: 0, why: 'whole numbers' };
    expect(evaluate('id', { ...read, printed: ['1', '4', '9'], tolerance: exact }).passed).toBe(true);
  });

  test('is given by its digits, never as numbers of ours', () => {
    expect(() => evaluate('id', { ...square, status: 'seen' })).toThrow(/digits/);
    expect(() => print('1,0', '4', '9')).toThrow(/not a printed number/);
  });
});

test('an id can be part of an address', () => {
  expect(() => evaluate('an id', square)).toThrow(/blank/);
});
