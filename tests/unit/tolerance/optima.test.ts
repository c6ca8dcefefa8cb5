import { shadowPrices, tradeOffFront } from '@airspring/core/tolerance';
import { expect, test } from 'vitest';
import { pathsOf } from '../../refusal/faults.js';

test('the largest rectangle of a given half perimeter gains half of it for each unit', () => {
  // Greatest x y under x + y ≤ 10: x = y = 5, and the area x y gains 5 for each unit.
  const { byLimit, left, warnings } = shadowPrices({ x: -5, y: -5 }, { half: { x: 1, y: 1 } });
  expect(byLimit.half).toBeCloseTo(5, 12);
  expect(left).toBeLessThan(1e-12);
  expect(warnings).toEqual([]);
});

test('a limit that pulls the other way costs nothing', () => {
  expect(shadowPrices({ x: -1 }, { low: { x: -2 } })).toMatchObject({ byLimit: { low: 0 }, left: 1 });
});

test('what is no optimum is answered with a warning that says how far from one it is', () => {
  const { left, warnings } = shadowPrices({ x: -3, y: -4 }, { x: { x: 1 } });
  expect(left).toBeCloseTo(0.8, 12);
  expect(warnings.map(({ path }) => path)).toEqual(['left']);
});

test('without limits nothing is held, and an objective without slope needs nothing', () => {
  expect(shadowPrices({ x: 2 }, {})).toMatchObject({ byLimit: {}, left: 1 });
  expect(shadowPrices({ x: 0 }, { x: { x: 1 } })).toMatchObject({ byLimit: { x: 0 }, left: 0, warnings: [] });
});

test('slopes that are no numbers, limits without slope, and limits that follow from others are refused', () => {
  expect(pathsOf(() => shadowPrices({ x: Number.NaN }, { a: { x: Infinity } }))).toEqual(['objective.x', 'limits.a.x']);
  expect(pathsOf(() => shadowPrices({ x: 1 }, { a: { x: 0 } }))).toEqual(['limits.a']);
  expect(pathsOf(() => shadowPrices({ x: 1 }, { a: { x: 2 }, b: { x: 3 } }))).toEqual(['limits']);
});

test('equal points stay on the front together, and one alone is a front', () => {
  expect(
    tradeOffFront([
      [1, 2],
      [1, 2],
      [2, 1],
      [2, 2],
    ]),
  ).toEqual([0, 1, 2]);
  expect(tradeOffFront([[1, 2, 3]])).toEqual([0]);
  expect(tradeOffFront([])).toEqual([]);
});

test('points of other lengths, and numbers that are not finite, are refused at their places', () => {
  expect(
    pathsOf(() =>
      tradeOffFront([
        [1, 2],
        [1, 2, 3],
      ]),
    ),
  ).toEqual(['points[1]']);
  expect(pathsOf(() => tradeOffFront([[1], [2]]))).toEqual(['points[0]', 'points[1]']);
  expect(
    pathsOf(() =>
      tradeOffFront([
        [1, 2],
        [1, Number.NaN],
      ]),
    ),
  ).toEqual(['points[1][1]']);
});

test('what is no record, or no list, is refused at its place', () => {
  expect(pathsOf(() => shadowPrices(null as never, {}))).toEqual(['objective']);
  expect(pathsOf(() => shadowPrices({ x: 1 }, null as never))).toEqual(['limits']);
  expect(pathsOf(() => shadowPrices({ x: 1 }, { a: null as never, b: [1] as never }))).toEqual([
    'limits.a',
    'limits.b',
  ]);
  expect(pathsOf(() => tradeOffFront(null as never))).toEqual(['points']);
  expect(pathsOf(() => tradeOffFront([null as never, [1, 2], 3 as never]))).toEqual(['points[0]', 'points[2]']);
});

test('an input may have the name of what every record has', () => {
  const { byLimit, left } = shadowPrices({ toString: -2 } as never, { a: { toString: 1 } as never, b: { x: 1 } });
  expect([byLimit, left]).toEqual([{ a: 2, b: 0 }, 0]);
});
