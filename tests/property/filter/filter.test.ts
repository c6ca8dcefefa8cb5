import {
  besselShape,
  biquads,
  butterworthShape,
  chebyshevShape,
  compileBiquads,
  compileFilter,
  type Filter,
  filterGroupDelay,
  filterLevel,
  highPass,
  legendreShape,
  linkwitzRileyShape,
  lowPass,
  poleShift,
  sectionsOf,
  shapeByQ,
  shelf,
  singlePrecision,
} from '@airspring/core/filter';
import { frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { filterArbitrary, wildFilter, wildHighPass } from '../../arbitrary/filter.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';

const grid = logarithmicGrid(1, 20000, 40);
const hertz = fc.double({ min: 1, max: 2000, noNaN: true });

function response(filter: Filter, at = grid) {
  const re = new Float64Array(at.length).fill(1);
  const im = new Float64Array(at.length);
  compileFilter(filter)(at, { re, im });
  return { re, im };
}
const near = (got: ArrayLike<number>, expected: ArrayLike<number>, size: number) =>
  Array.from(expected).forEach((e, i) => {
    expect(Math.abs(got[i]! - e)).toBeLessThanOrEqual(size);
  });

test.prop([filterArbitrary, fc.double({ min: 0.1, max: 10, noNaN: true })])(
  'scaling: corner and frequencies times a, delay divided by a',
  (filter, a) => {
    const power = (list: readonly number[]) => list.map((c, k) => c * a ** (list.length - 1 - k));
    const scaled = { ...filter, numerator: power(filter.numerator), denominator: power(filter.denominator) };
    const higher = frequencyGrid(grid.map((f) => f * a));
    near(filterLevel(scaled, higher), filterLevel(filter, grid), 1e-9);
    near(
      filterGroupDelay(scaled, higher).map((d) => d * a),
      filterGroupDelay(filter, grid),
      1e-11,
    );
  },
);

test.prop([filterArbitrary])('passes all far above the corner, falls by 20 n dB a decade far below', (filter) => {
  const order = filter.denominator.length - 1;
  const [low, decade, high] = filterLevel(filter, frequencyGrid([0.001, 0.01, 1e6])) as unknown as [
    number,
    number,
    number,
  ];
  expect(decade - low).toBeCloseTo(20 * order, 1);
  expect(high).toBeCloseTo(0, 4);
});

test.prop([filterArbitrary, hertz])('group delay is the slope of the phase', (filter, f) => {
  const step = f * 1e-5;
  const { re, im } = response(filter, frequencyGrid([f - step, f + step]));
  const [a, b, c, d] = [re[1], im[1], re[0], im[0]] as [number, number, number, number];
  const slope = -Math.atan2(b * c - a * d, a * c + b * d) / (2 * Math.PI * 2 * step);
  const delay = filterGroupDelay(filter, frequencyGrid([f]))[0]!;
  expect(Math.abs(delay - slope)).toBeLessThanOrEqual(1e-6 * Math.abs(delay) + 1e-9 / f);
});

test.prop([fc.constantFrom(1, 2, 3, 4), hertz, hertz])('Butterworth: |H|² is 1/(1 + (f₀/f)²ⁿ)', (order, corner, f) => {
  const filter = highPass(butterworthShape(order), si('frequency', corner));
  const expected = -10 * Math.log10(1 + (corner / f) ** (2 * order));
  expect(Math.abs(filterLevel(filter, frequencyGrid([f]))[0]! - expected)).toBeLessThan(1e-9);
});

test.prop([filterArbitrary, filterArbitrary])('two filters in turn add their levels', (first, second) => {
  const { re, im } = response(first);
  compileFilter(second)(grid, { re, im });
  const sum = filterLevel(second, grid).map((l, i) => l + filterLevel(first, grid)[i]!);
  near(
    re.map((a, i) => 20 * Math.log10(Math.hypot(a, im[i]!))),
    sum,
    1e-9,
  );
});

/** A finite answer, or a refusal; nothing else. */
function answers(work: () => ArrayLike<number>) {
  let values: ArrayLike<number>;
  try {
    values = work();
  } catch (error) {
    expect(error).toMatchObject({ code: 'airspring-input' });
    return;
  }
  for (const value of Array.from(values)) expect(Number.isFinite(value)).toBe(true);
}
const widest = logarithmicGrid(1e-4, 1e7, 23);
const all = (filter: Filter) => {
  const { re, im } = response(filter, widest);
  return [...re, ...im, ...filterLevel(filter, widest), ...filterGroupDelay(filter, widest)];
};
const fuzz = { numRuns: fuzzRuns };
const time = 5000 + 10 * fuzzRuns; // ms: more runs, more time

test.prop([wildHighPass], fuzz)(
  'any high-pass is answered with finite numbers or refused',
  (input) => {
    const { Q, order, corner } = input;
    answers(() => all(highPass(butterworthShape(order), corner as never)));
    answers(() => all(highPass(shapeByQ((Q === undefined ? { order } : { order, Q }) as never), corner as never)));
  },
  time,
);

test.prop([filterArbitrary, fc.constantFrom(8000, 44_100, 48_000, 192_000)])(
  'digital sections do at f what the analog filter does at the warped frequency',
  (filter, rate) => {
    const digital = biquads(filter, { sampleRate: si('frequency', rate) });
    const at =
      (filter.denominator[0]! / filter.denominator.at(-1)!) ** (1 / (filter.denominator.length - 1)) / (2 * Math.PI);
    const below = logarithmicGrid(at / 3, 0.4 * rate, 30);
    const warped = below.map((f) => (at * Math.tan((Math.PI * f) / rate)) / Math.tan((Math.PI * at) / rate));
    const column = { re: new Float64Array(30).fill(1), im: new Float64Array(30) };
    compileBiquads(digital)(below, column);
    const expected = response(filter, frequencyGrid(warped));
    // The coefficients hold 53 bits of a number next to 1.
    const size = 1e-14 * (rate / at) ** 2 + 1e-10;
    near(column.re, expected.re, size);
    near(column.im, expected.im, size);
  },
);

test.prop([filterArbitrary])('the sections of a filter multiply to it', (filter) => {
  const product = { re: new Float64Array(grid.length).fill(1), im: new Float64Array(grid.length) };
  for (const section of sectionsOf(filter)) compileFilter(section)(grid, product);
  const { re, im } = response(filter);
  near(product.re, re, 1e-12);
  near(product.im, im, 1e-12);
});

test.prop([fc.constantFrom(2, 4, 6, 8), hertz])(
  'low-pass and high-pass of Linkwitz–Riley add up to a flat level',
  (order, f) => {
    const shape = linkwitzRileyShape(order);
    const at = frequencyGrid([f]);
    const [low, high] = [response(lowPass(shape, '80 Hz'), at), response(highPass(shape, '80 Hz'), at)];
    const side = order % 4 === 0 ? 1 : -1;
    expect(Math.hypot(low.re[0]! + side * high.re[0]!, low.im[0]! + side * high.im[0]!)).toBeCloseTo(1, 12);
  },
);

test.prop(
  [wildHighPass, fc.oneof(fc.double(), fc.constantFrom(8000, 48_000, 192_000)), fc.integer({ min: -1, max: 10 })],
  fuzz,
)(
  'any shape, shelf, pole shift or sample rate is answered with finite numbers or refused',
  ({ corner, Q }, rate, order) => {
    const shapes = [
      () => butterworthShape(order),
      () => besselShape(order),
      () => legendreShape(order),
      () => linkwitzRileyShape(order),
      () => chebyshevShape(order, { ripple: Q as number }),
    ];
    for (const shape of shapes)
      answers(() => {
        const filter = highPass(shape(), corner as never);
        const digital = biquads(filter, { sampleRate: rate as never });
        const single = singlePrecision(digital);
        const numbers = single.ok ? [single.noiseGain, single.deviation.level, single.deviation.phase] : [];
        return [
          ...all(filter),
          ...all(lowPass(shape(), corner as never)),
          ...digital.sections.flatMap(Object.values),
          ...numbers,
        ];
      });
    answers(() => all(shelf({ order: order as 1, corner: corner as never, gain: rate })));
    answers(() => all(poleShift({ f0: corner as never, Q0: Q as number, f1: '30 Hz', Q1: 0.7 })));
  },
  time,
);

test.prop([wildFilter], fuzz)(
  'any filter of coefficients is answered with finite numbers or refused',
  (filter) => {
    answers(() => all(filter));
    answers(() => sectionsOf(filter).flatMap(({ numerator, denominator, f0 }) => [...numerator, ...denominator, f0]));
  },
  time,
);
