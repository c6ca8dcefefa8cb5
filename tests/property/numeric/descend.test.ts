import { descend } from '@airspring/core/numeric';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';

/** The walk's cost against the least of all cells. */
function walkAndBest(sizes: readonly number[], cost: (cell: readonly number[]) => number) {
  const last = sizes.map((size) => size - 1);
  const walk = descend(cost, last, { lower: sizes.map(() => 0), upper: last, firstStep: 16 });
  const every = (cell: readonly number[]): number => {
    const size = sizes[cell.length];
    if (size === undefined) return cost(cell);
    let least = Infinity;
    for (let at = 0; at < size; at++) least = Math.min(least, every([...cell, at]));
    return least;
  };
  return [walk.cost, every([])] as const;
}

const slope = fc.double({ min: 0.01, max: 3, noNaN: true });
const apex = fc.integer({ min: 0, max: 40 });
const floor = fc.double({ min: 0, max: 5, noNaN: true });
const tent = (x: number, top: number, left: number, right: number) => (x < top ? (top - x) * left : (x - top) * right);

test.prop([floor, apex, slope, slope])(
  'a limit of two slopes is followed to its lowest cell',
  (base, top, left, right) => {
    const cost = ([v = 0, f = 0]: readonly number[]) => (v >= base + tent(f, top, left, right) ? v : Infinity);
    const [walk, best] = walkAndBest([130, 41], cost);
    expect(walk).toBe(best);
  },
);

test.prop([floor, apex, fc.double({ min: 1e-4, max: 0.07, noNaN: true })])('and a curved one', (base, top, bend) => {
  const cost = ([v = 0, f = 0]: readonly number[]) => (v >= base + bend * (f - top) ** 2 ? v : 1e6);
  const [walk, best] = walkAndBest([130, 41], cost);
  expect(walk).toBe(best);
});

const three = [floor, fc.tuple(apex, apex), fc.tuple(slope, slope), fc.tuple(slope, slope)] as const;
const ridge = (base: number, [a, b]: number[], left: number[], right: number[], f: number, g: number) =>
  base + tent(f, a! / 2, left[0]!, right[0]!) + tent(g, b! / 2, left[1]!, right[1]!);

test.prop([...three])('and one of three axes', (base, tops, left, right) => {
  const cost = ([v = 0, f = 0, g = 0]: readonly number[]) => (v >= ridge(base, tops, left, right, f, g) ? v : Infinity);
  const [walk, best] = walkAndBest([130, 21, 21], cost);
  expect(walk).toBe(best);
});

test.prop([...three, fc.integer({ min: 1, max: 500 })])(
  'where a second axis has a price as well, to two units of the first',
  (base, tops, left, right, price) => {
    const cost = ([v = 0, f = 0, g = 0]: readonly number[]) =>
      v >= ridge(base, tops, left, right, f, g) ? v + (price / 1000) * f : Infinity;
    const [walk, best] = walkAndBest([130, 21, 21], cost);
    expect(walk! - best!).toBeLessThan(2);
  },
);
