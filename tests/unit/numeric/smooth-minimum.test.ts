import { boundedMinimum, smoothMinimum } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

/** Level of a high-pass of the second order at x times its corner, dB: greatest at √(1/(1 − 1/(2Q²))). */
const level = (Q: number) => (x: number) => 80 + 20 * Math.log10((x * x) / Math.hypot(1 - x * x, x / Q));
const top = (Q: number) => Math.sqrt(1 / (1 - 1 / (2 * Q * Q)));
/** Impedance of a resonance at 1, behind a resistance, Ω. */
const impedance = (Q: number) => (x: number) =>
  Math.hypot(6 + 30 / (1 + Q * Q * (x - 1 / x) ** 2), (30 * Q * (x - 1 / x)) / (1 + Q * Q * (x - 1 / x) ** 2));
const steps = (at: number, part: number) => [at * (1 - part * 0.7), at * (1 + part * 1.3)] as const;

test.each([
  ['the top of a level, Q 0.8', level(0.8), top(0.8), 0.03],
  ['the top of a level, Q 1', level(1), top(1), 0.03],
  ['the top of a level, Q 1, neighbours close', level(1), top(1), 0.004],
  ['the top of a level, Q 3', level(3), top(3), 0.03],
  ['the top of a level, Q 30', level(30), top(30), 0.03],
  ['an impedance, Q 0.7', impedance(0.7), 1, 0.02],
  ['an impedance, Q 5', impedance(5), 1, 0.02],
  ['an impedance, Q 60, sharper than the samples', impedance(60), 1, 0.03],
] as const)('%s, to 1e-10 in frequency', (_, f, at, part) => {
  const found = smoothMinimum((x) => -f(x), ...steps(at, part));
  expect(found.converged).toBe(true);
  expect(Math.abs(found.x / at - 1)).toBeLessThan(1e-10);
  expect(found.evaluations).toBeLessThan(150);
});

test('the same in hertz, and a minimum of values above and below zero', () => {
  expect(smoothMinimum((f) => -impedance(3)(f / 43.21), 42, 45).x / 43.21).toBeCloseTo(1, 10);
  expect(smoothMinimum((x) => Math.cosh(x - 1) - 1, 0, 3).x).toBeCloseTo(1, 10);
});

test.each([
  ['a corner', (x: number) => Math.max(x - 1, 3 * (1 - x)), 0.9, 1.2],
  ['a null in decibels', (x: number) => 20 * Math.log10(Math.abs(x - 1)), 0.9, 1.2],
  ['an end', (x: number) => x, 0.9, 1.2],
] as const)('%s has no such minimum: the coarse answer, and it says so', (_, f, low, high) => {
  const found = smoothMinimum(f, low, high);
  expect(found.converged).toBe(false);
  expect(found.x).toBe(boundedMinimum(f, low, high, 1e-6).x);
});
