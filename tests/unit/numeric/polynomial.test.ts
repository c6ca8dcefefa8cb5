import {
  polynomialColumnOnImaginaryAxis,
  polynomialDerivative,
  polynomialOnImaginaryAxis,
  polynomialProduct,
  polynomialSum,
} from '@airspring/core/numeric';
import { expect, test } from 'vitest';

test('product, sum and derivative by hand', () => {
  expect([...polynomialProduct([1, 1], [1, -1])]).toEqual([1, 0, -1]);
  expect([...polynomialProduct([], [1, 2])]).toEqual([]);
  expect([...polynomialSum([1, 2], [1])]).toEqual([2, 2]);
  expect([...polynomialDerivative([5, 3, 2])]).toEqual([3, 4]);
  expect([...polynomialDerivative([])]).toEqual([]);
});

test.each([
  [[1, 2, 1], 1, 0, 2],
  [[7], 3, 7, 0],
  [[0, 1, 0, 1], 2, 0, -6],
  [[1, 0, 0, 0, 1, 1], 2, 17, 32],
  [[], 2, 0, 0],
])('%j at j%d', (coefficients, omega, re, im) => {
  const out = new Float64Array(2);
  polynomialOnImaginaryAxis(coefficients, omega, out);
  expect([...out]).toEqual([re, im]);
  const [reColumn, imColumn] = [new Float64Array(1), new Float64Array(1)];
  polynomialColumnOnImaginaryAxis(coefficients, Float64Array.of(omega), reColumn, imColumn);
  expect([reColumn[0], imColumn[0]]).toEqual([re, im]);
});
