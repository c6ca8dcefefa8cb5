import { evenPoints, randomNumbers, uniformAt } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

const count = 20000;

test('the same seed gives the same numbers, another gives others', () => {
  const [a, b, c] = [randomNumbers(7), randomNumbers(7), randomNumbers(2 ** 40 + 7)];
  const first = Array.from({ length: 5 }, a);
  expect(Array.from({ length: 5 }, b)).toEqual(first);
  expect(Array.from({ length: 5 }, c)).not.toEqual(first);
});

test('uniform: a chi-square of 100 classes within its 0.01 % ends, and neighbours are not correlated', () => {
  const next = randomNumbers(1);
  const x = Array.from({ length: count }, next);
  const classes = new Array<number>(100).fill(0);
  for (const v of x) classes[Math.floor(v * 100)]!++;
  const chi = classes.reduce((s, n) => s + (n - count / 100) ** 2 / (count / 100), 0);
  expect(chi).toBeGreaterThan(53.5);
  expect(chi).toBeLessThan(161.3);
  const correlation = x.slice(1).reduce((s, v, i) => s + (v - 0.5) * (x[i]! - 0.5), 0) / (count / 12);
  expect(Math.abs(correlation)).toBeLessThan(4 / Math.sqrt(count));
});

test('even points integrate a smooth function far better than chance', () => {
  const points = evenPoints(2);
  const out = new Float64Array(2);
  let sum = 0;
  for (let i = 0; i < count; i++) {
    points(i, out);
    sum += out[0]! ** 2 * out[1]!;
  }
  expect(Math.abs(sum / count - 1 / 6)).toBeLessThan(0.05 / Math.sqrt(count));
});

test('refuses what is no seed and no dimension', () => {
  expect(() => randomNumbers(-1)).toThrowError(/seed/);
  expect(() => randomNumbers(0.5)).toThrowError(/seed/);
  expect(() => evenPoints(0)).toThrowError(/dimensions/);
});

test('a number of two counters is never rounded, so that none is 1', () => {
  const uniform = uniformAt(3);
  for (let i = 0; i < 100; i++) expect((uniform(i, 0) * 2 ** 53) % 2).toBe(1);
});
