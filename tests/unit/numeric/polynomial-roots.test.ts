import { polynomialProduct, polynomialRoots } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

test.each([0, 1, 2, 3, 4, 5])(
  'a root of multiplicity m is found to the m-th root of the rounding (%i more)',
  (more) => {
    const m = more + 1;
    let c = Float64Array.of(1);
    for (let k = 0; k < m; k++) c = polynomialProduct(c, [-1, 1]) as Float64Array<ArrayBuffer>;
    const { re, im, converged } = polynomialRoots(c);
    expect(converged).toBe(true);
    re.forEach((x, i) => expect(Math.hypot(x - 1, im[i]!)).toBeLessThan(4 * (2 ** m * Number.EPSILON) ** (1 / m)));
  },
);

test('zeros at either end: a lower degree, and roots at 0 among the others', () => {
  const { re, im } = polynomialRoots([0, 0, 2, -1, -1, 0, 0]);
  expect([...re].map((x) => Math.round(x * 1e12) / 1e12)).toEqual([-2, 0, 0, 1]);
  expect([...im]).toEqual([0, 0, 0, 0]);
});

test('a constant has no root', () => expect(polynomialRoots([3, 0]).re.length).toBe(0));

test('pairs stand together, the lower half first', () => {
  const { re, im } = polynomialRoots([5, 2, 1]);
  expect([...re]).toEqual([-1, -1]);
  expect([...im]).toEqual([-2, 2]);
});

test('coefficients at the ends of the range of numbers', () => {
  const { re, converged } = polynomialRoots([1e-300, 1e-300 + 1e300, 1e300]);
  expect(converged).toBe(true);
  expect(re[0]).toBeCloseTo(-1, 14);
});

test('refuses with every fault', () => {
  const faults = (...expected: object[]) =>
    expect.objectContaining({ faults: expected.map((fault) => expect.objectContaining(fault)) });
  expect(() => polynomialRoots([Number.NaN, 1, Infinity])).toThrowError(
    faults({ code: 'not-finite', path: 'coefficients[0]' }, { code: 'not-finite', path: 'coefficients[2]' }),
  );
  expect(() => polynomialRoots([])).toThrowError(faults({ code: 'empty' }));
  expect(() => polynomialRoots([0, 0])).toThrowError(faults({ code: 'empty' }));
});
