/** Every alignment of ours obeys the laws of its seam; each liar breaks the law that is meant for it, and only that one. */
import {
  type Alignment,
  bandPass,
  bessel,
  boomBox,
  butterworth,
  chebyshev,
  criticallyDamped,
  interOrder,
  legendre,
  linkwitzRiley,
  lowShelf,
  ofTotalQ,
  quasiThirdOrder,
  sixthOrderBandPass,
  subChebyshev,
  superBoomBox,
} from '@airspring/core/alignment';
import { alignmentLaws } from '@airspring/core/laws';
import { cutoff } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { reasons } from './boxes.js';

const ours = [
  ...[2, 3, 4, 5, 6].flatMap((order) => [butterworth(order), bessel(order), legendre(order), criticallyDamped(order)]),
  ...[2, 4, 6].flatMap((order) => [chebyshev(order), chebyshev(order, { ripple: 0.5 }), subChebyshev(order)]),
  ...[quasiThirdOrder, boomBox, superBoomBox, linkwitzRiley, interOrder(), ofTotalQ(0.8)],
  ...[lowShelf(1), lowShelf(3), lowShelf(9)],
  ...[bandPass(), bandPass({ ripple: 1 }), bandPass({ S: 0.9 }), bandPass({ S: 0.3, Q: 2 })],
  ...[undefined, 1e-9, 1e-6, 1e-3, 0.2, 6].map((ripple) => sixthOrderBandPass(ripple ? { ripple } : {})),
  ...[1e-9, 15, 20].map((ripple) => chebyshev(10, { ripple })),
];
test.each(ours.map((one) => [`${one.name} of order ${one.order}`, one] as const))('%s', (_, alignment) => {
  expect(reasons(alignmentLaws(alignment))).toEqual([]);
});

const deepest: Alignment = {
  name: 'deepest',
  order: 4,
  target: {
    least: (system) => {
      const reach = cutoff(system, { drop: 6 });
      return reach.ok ? reach.frequency : 1000;
    },
  },
  parameters: {},
  sources: ['own'],
};
test('a range that is turned round breaks the law of the parameter alone, which names it', () => {
  const { free } = quasiThirdOrder;
  const turned = { ...quasiThirdOrder, free: { ...free!, from: free!.to, to: free!.from } };
  const broken = alignmentLaws(turned).filter(({ holds }) => !holds);
  expect(broken.map(({ law }) => law)).toEqual(['a parameter that says what it is']);
  expect(broken[0]!.detail).toMatch(/free: a range from /);
});

test('a goal', () => expect(reasons(alignmentLaws(deepest))).toEqual([]));

const flat = butterworth(4);
const shape = (flat.target as (parameter: number) => readonly number[])(0);
const free = quasiThirdOrder.free!;
let calls = 0;
const liars: Readonly<Record<string, Alignment>> = {
  'says its name and its sources': { ...flat, sources: [] },
  'of its order': { ...flat, order: 3 },
  'one far above': { ...flat, target: () => shape.map((value) => 2 * value) },
  positive: { ...flat, target: () => [1, 0, 2, 0, 1] },
  stable: { ...flat, target: () => [1, 0.5, 3, 5, 1] },
  'the same shape whenever it is asked': {
    ...flat,
    target: () => shape.map((a, i) => (i === 2 ? a + ++calls * 1e-3 : a)),
  },
  'a parameter that says what it is': { ...quasiThirdOrder, free: { ...free, told: () => ({ B: Number.NaN }) } },
  'a parameter that changes the shape': { ...quasiThirdOrder, target: () => shape },
  'says that it allows for zeros': { ...quasiThirdOrder, withZeros: undefined as never },
  'the same shape for a box without zeros': {
    ...flat,
    target: (_, numerator) => (numerator ? [1, 3, 4, 3, 1] : shape),
  },
  'told over the frequency of the zeros': {
    ...flat,
    target: (_, numerator) => (numerator?.[2] ? shape.map((a, k) => a * 2 ** (4 - k)) : shape),
  },
  'a number for every box': { ...deepest, target: { least: () => Number.NaN } },
  'the same number whenever it is asked': { ...deepest, target: { least: () => ++calls } },
  'a number that the box changes': { ...deepest, target: { least: ({ family }) => family.length } },
};
test('a goal that returns nothing', () => {
  const silent: Alignment = { ...deepest, target: { least: () => undefined as never } };
  const [wrong] = alignmentLaws(silent).filter(({ holds }) => !holds);
  expect([wrong?.law, wrong?.detail]).toEqual(['a number for every box', 'undefined']);
});
test('an order below the band that is none', () => {
  for (const orderBelow of [0, 1.5, 5]) {
    const broken = alignmentLaws({ ...bandPass(), orderBelow }).filter(({ holds }) => !holds);
    expect(broken.map((one) => one.law)).toContain('of its order');
  }
});
test.each(Object.entries(liars))('a liar: %s', (law, liar) => {
  const broken = alignmentLaws(liar).filter(({ holds }) => !holds);
  expect(broken.map((one) => one.law)).toContain(law);
});
