import { boundedMinimum, simplexMinimum } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

test.each([
  ['parabola', (x: number) => (x - 1) ** 2, 0, 3, 1, 15],
  ['fourth power', (x: number) => (x - 1) ** 4, 0, 3, 1, 90],
  ['corner', (x: number) => Math.abs(x - 0.3), -1, 1, 0.3, 60],
  ['at an end', (x: number) => x, 2, 5, 2, 60],
  ['partly without value', (x: number) => Math.sqrt(x) - 2 * x ** 0.25, -1, 3, 1, 60],
] as const)('on a line: %s', (name, f, low, high, expected, most) => {
  const found = boundedMinimum(f, low, high);
  expect(found.converged).toBe(true);
  expect(Math.abs(found.x - expected)).toBeLessThan(name === 'fourth power' ? 1e-3 : 1e-6);
  expect(found.evaluations).toBeLessThan(most);
});

const valley = ([x, y]: readonly number[]) => 100 * (y! - x! * x!) ** 2 + (1 - x!) ** 2;

test('in a plane: the curved valley, and the same with its minimum cut off by a bound', () => {
  const free = simplexMinimum(valley, [-1.2, 1], [-5, -5], [5, 5], { evaluations: 5000 });
  expect(free.converged).toBe(true);
  expect(free.value).toBeLessThan(1e-9);
  const cut = simplexMinimum(valley, [-1.2, 1], [-5, -5], [0.5, 5], { evaluations: 5000 });
  expect(cut.x[0]).toBe(0.5);
  expect(cut.x[1]).toBeCloseTo(0.25, 5);
});

test('six variables of unlike size; a start outside the bounds; a count that is kept', () => {
  const f = (x: readonly number[]) => x.reduce((s, v, i) => s + ((v - i) / 10 ** (i % 3)) ** 2, 0);
  const [low, high] = [new Array<number>(6).fill(-50), new Array<number>(6).fill(50)];
  const found = simplexMinimum(f, new Array<number>(6).fill(99), low, high, { evaluations: 20000 });
  found.x.forEach((v, i) => expect(v).toBeCloseTo(i, 2));
  let asked = 0;
  const few = simplexMinimum((x) => f(x) + 0 * asked++, new Array<number>(6).fill(9), low, high, { evaluations: 50 });
  expect(few).toMatchObject({ converged: false, evaluations: asked });
  expect(asked).toBeLessThan(60);
});

test('refuses with every fault', () => {
  expect(() => boundedMinimum((x) => x, 1, 1, 0)).toThrowError(/high.*\n.*tolerance|tolerance.*\n.*high/);
  expect(() => simplexMinimum(() => 0, [0], [1, 2], [0])).toThrowError(/low.*\n.*high/);
  expect(() => simplexMinimum(() => 0, [], [], [])).toThrowError(/start/);
});
