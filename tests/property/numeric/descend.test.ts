import { descend, survey } from '@airspring/core/numeric';
import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';

/** The walk's cost against the least of all cells. */
function walkAndBest(sizes: readonly number[], cost: (cell: readonly number[]) => number) {
  const last = sizes.map((size) => size - 1);
  const walk = descend(cost, last, { lower: sizes.map(() => 0), upper: last, firstStep: 16 });
  const [best] = survey(sizes, 1, (cell, costs) => {
    costs[0] = cost(Array.from(cell));
  });
  return [walk.cost, best?.cost];
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

test.prop([
  floor,
  fc.tuple(apex, apex),
  fc.tuple(slope, slope),
  fc.tuple(slope, slope),
  fc.double({ min: 0, max: 0.5, noNaN: true }),
])('and one of three axes, with a price on the others', (base, [a, b], left, right, price) => {
  const cost = ([v = 0, f = 0, g = 0]: readonly number[]) =>
    v >= base + tent(f, a / 2, left[0], right[0]) + tent(g, b / 2, left[1], right[1]) ? v + price * f : Infinity;
  const [walk, best] = walkAndBest([130, 21, 21], cost);
  expect(walk).toBeCloseTo(best!, 9);
});
