import { factorComplexMatrix, factorMatrix, matrixExponential } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

const real = (a: number[]) => factorMatrix(Math.sqrt(a.length), Float64Array.from(a), new Int32Array(8));
const complex = (a: number[], b: number[]) =>
  factorComplexMatrix(Math.sqrt(a.length), Float64Array.from(a), Float64Array.from(b), new Int32Array(8));

test('a singular matrix is told by 0 or by rounding, never by NaN', () => {
  expect(real([0])).toBe(0);
  expect(real([1, 2, 2, 4])).toBe(0);
  expect(real([Number.NaN])).toBe(0);
  expect(complex([0, 0, 0, 0], [0, 0, 0, 0])).toBe(0);
  expect(complex([1, 2, 0, 0], [0, 0, 1, 2])).toBe(0);
  expect(real([0.1, 0.2, 0.3, 0.3, 0.5, 0.7, 0.4, 0.7, 1])).toBeLessThan(1e-14);
});

test('rows and columns of very different units are not near to singular', () => {
  expect(real([1e-9, 2e-9, 3e6, 1e6])).toBeGreaterThan(0.1);
  expect(complex([1e-9, 0, 0, 1e9], [1e-9, 0, 0, 0])).toBe(1);
});

test('the exponential refuses what is no square, not finite, or too large', () => {
  expect(() => matrixExponential(2, [1, 2, 3])).toThrowError(expect.objectContaining({ code: 'airspring-input' }));
  expect(() => matrixExponential(1, [Number.NaN])).toThrowError(expect.objectContaining({ code: 'airspring-input' }));
  expect(() => matrixExponential(1, [1000])).toThrowError(expect.objectContaining({ code: 'airspring-input' }));
  expect(matrixExponential(1, [-1e300])[0]).toBe(0);
  expect([...matrixExponential(2, [0, 0, 0, 0])]).toEqual([1, 0, 0, 1]);
});
