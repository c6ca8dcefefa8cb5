import { descend } from '@airspring/core/numeric';
import { expect, test } from 'vitest';

const wide = { lower: [0, 0], upper: [1e5, 1e5], firstStep: 256 };

/** The end of a walk to the least first number that a limit leaves, and how often it asked. */
function lowest(limit: (f: number) => number, start: readonly number[], forbidden: number) {
  let asked = 0;
  const { cell } = descend(
    ([v = 0, f = 0]) => {
      asked++;
      return v >= limit(f) ? v : forbidden;
    },
    start,
    wide,
  );
  return { cell, asked };
}

test.each([
  ['falls by one in twenty', (f: number) => 1000 + 0.05 * Math.abs(f - 5000), 1e6],
  ['falls by one in twenty, forbidden without a measure', (f: number) => 1000 + 0.05 * Math.abs(f - 5000), Infinity],
  ['falls by one in three hundred', (f: number) => 1000 + 0.003 * Math.abs(f - 5000), 1e6],
  ['falls more slowly on one side', (f: number) => 1000 + 0.05 * Math.max(f - 5000, (5000 - f) / 3), 1e6],
  ['falls ever more slowly', (f: number) => 1000 + 1e-4 * (f - 5000) ** 2, 1e6],
] as const)('a walk along a limit that %s reaches its lowest point', (_, limit, forbidden) => {
  const { cell, asked } = lowest(limit, [Math.ceil(limit(3000)), 3000], forbidden);
  expect(cell).toEqual([1000, 5000]);
  expect(asked).toBeLessThan(2500);
});

test('a narrow valley of any slope is followed', () => {
  const valley = ([v = 0, f = 0]: readonly number[]) => v + 1000 * Math.abs(v - f / 37);
  expect(descend(valley, [270, 9990], wide).cell).toEqual([0, 0]);
});

test('no cell is asked twice, none outside the bounds, and a level plain ends the walk', () => {
  const asked: string[] = [];
  const level = (cell: readonly number[]) => {
    asked.push(cell.join());
    return 1;
  };
  expect(descend(level, [3, 4], { lower: [0, 0], upper: [1000, 1000], firstStep: 64 })).toEqual({
    cell: [3, 4],
    cost: 1,
  });
  expect(new Set(asked).size).toBe(asked.length);
  expect(asked.some((cell) => cell.includes('-'))).toBe(false);
  expect(asked.length).toBeLessThan(1000);
});
