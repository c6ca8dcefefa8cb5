/** Prices by limits in any units, and fronts against the definition. */
import { shadowPrices, tradeOffFront } from '@airspring/core/tolerance';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';

const slope = fc.double({ min: 0.1, max: 3, noNaN: true });
const price = fc.double({ min: 0, max: 5, noNaN: true });

test.prop([
  fc.array(fc.tuple(slope, slope, price), { minLength: 1, maxLength: 3 }),
  fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
])('prices that make up a slope are found again, and a limit in other units has its price in those', (rows, unit) => {
  // Each limit has an input of its own beside the one they share, so that none follows from the others.
  const limits = Object.fromEntries(rows.map(([shared, own], i) => [`g${i}`, { shared, [`own${i}`]: own }]));
  const scaled = Object.fromEntries(
    rows.map(([shared, own], i) => [`g${i}`, { shared: shared * unit, [`own${i}`]: own * unit }]),
  );
  const objective: Record<string, number> = { shared: -rows.reduce((sum, [shared, , by]) => sum + shared * by, 0) };
  rows.forEach(([, own, by], i) => {
    objective[`own${i}`] = -own * by;
  });
  const { byLimit } = shadowPrices(objective, limits);
  const other = shadowPrices(objective, scaled).byLimit;
  rows.forEach(([, , by], i) => {
    expect(Math.abs(byLimit[`g${i}`]! - by)).toBeLessThan(1e-6);
    expect(Math.abs(other[`g${i}`]! * unit - by)).toBeLessThan(1e-6);
  });
});

const few = fc.integer({ min: 0, max: 5 });
const points = fc.oneof(
  fc.array(fc.tuple(few, few), { maxLength: 40 }),
  fc.array(fc.tuple(few, few, few), { maxLength: 60 }),
  fc.array(fc.tuple(slope, slope, slope), { maxLength: 60 }),
);

test.prop([points])(
  'a front holds each point that no other betters, and no other point',
  (list: readonly (readonly number[])[]) => {
    const betters = (q: readonly number[], p: readonly number[]) =>
      q.every((number, k) => number <= p[k]!) && q.some((number, k) => number < p[k]!);
    expect(tradeOffFront(list)).toEqual([...list.keys()].filter((i) => !list.some((q) => betters(q, list[i]!))));
  },
);
