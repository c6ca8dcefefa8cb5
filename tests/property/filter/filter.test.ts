import {
  butterworthShape,
  compileFilter,
  type Filter,
  filterGroupDelay,
  filterLevel,
  highPass,
  shapeByQ,
} from '@airspring/core/filter';
import { frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { test } from '@fast-check/vitest';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { filterArbitrary, wildFilter, wildHighPass } from '../../arbitrary/filter.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';

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

test.prop([wildFilter], fuzz)(
  'any filter of coefficients is answered with finite numbers or refused',
  (filter) => {
    answers(() => all(filter));
  },
  time,
);
