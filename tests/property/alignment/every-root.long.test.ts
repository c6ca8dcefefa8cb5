/**
 * Every box of an alignment is found, and no other: the textbook's equations of the leaky vented box, solved apart. For a shape
 * a1, a2, a3 and a leak QL, x = √h obeys x⁴ − a1 QL x³ + a3 QL x − 1 = 0; it gives 1/QT = x (a1 − x/QL) and alpha.
 */
import {
  type Alignment,
  bessel,
  boomBox,
  butterworth,
  chebyshev,
  interOrder,
  legendre,
  linkwitzRiley,
  quasiThirdOrder,
  solveAlignment,
  subChebyshev,
  superBoomBox,
} from '@airspring/core/alignment';
import { ventedFamily, ventedRatios } from '@airspring/core/enclosure';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';
import { fs, paperAir, physical, printedCoefficients, split } from '../../literature/enclosure/textbook.js';

interface Ratios {
  readonly QT: number;
  readonly h: number;
  readonly alpha: number;
}

/** All roots of the quartic with a positive quality factor and compliance ratio, by sign changes over a fine grid. */
function textbookBoxes([, a3, a2, a1]: readonly number[], QL: number): readonly Ratios[] {
  const leak = QL === 0 ? 0 : 1 / QL;
  const quartic = (x: number) => leak * x ** 4 - a1! * x ** 3 + a3! * x - leak;
  const grid = Array.from({ length: 401 }, (_, i) => 0.01 * 10000 ** (i / 400));
  return grid.slice(1).flatMap((high, i) => {
    let [low, top] = [grid[i]!, high];
    if (quartic(low) > 0 === quartic(top) > 0) return [];
    for (let turn = 0; turn < 80; turn++) {
      const middle = (low + top) / 2;
      if (quartic(middle) > 0 === quartic(low) > 0) low = middle;
      else top = middle;
    }
    const h = low ** 2;
    const QT = 1 / (low * (a1! - low * leak));
    const alpha = h * (a2! - h - leak / QT) - 1;
    return QT > 0 && alpha > 0 ? [{ QT, h, alpha }] : [];
  });
}

/** Coefficients over the frequency at which the first is 1: 1, a3, a2, a1, 1. */
function normalised(ascending: readonly number[]): number[] {
  const scale = ascending[0]! ** (1 / 4);
  return ascending.map((value, k) => value * scale ** (k - 4));
}
const shapeAt = ({ target }: Alignment, parameter: number) =>
  normalised((target as (parameter: number) => readonly number[])(parameter));

const driverOf = (Qts: number) => physical({ fs, ...split(Qts, 20), Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
const leak = fc.oneof(fc.constant(0), fc.double({ min: 2.5, max: 40, noNaN: true }));
const fixed = [butterworth(4), bessel(4), legendre(4), linkwitzRiley, interOrder(), chebyshev(4, { ripple: 0.3 })];
const free = [quasiThirdOrder, chebyshev(4), subChebyshev(4), boomBox, superBoomBox];

test.prop([fc.constantFrom(...fixed), leak])('a fixed shape has the boxes of the textbook', (type, QL) => {
  const wanted = textbookBoxes(shapeAt(type, 0), QL);
  const input = { drivers: driverOf(0.15), ...(QL > 0 && { QL }) };
  const found = solveAlignment(type, ventedFamily, input, { air: paperAir, addResistance: true });
  const boxes = found.ok ? [found, ...found.others].map(({ system }) => ventedRatios(system.spec, paperAir)) : [];
  expect(boxes.length).toBe(wanted.length);
  for (const { QT, h, alpha } of wanted) {
    const near = boxes.find((box) => Math.abs(box.h / h - 1) < 1e-7);
    expect(near?.QT).toBeCloseTo(QT, 7);
    expect(near?.alpha).toBeCloseTo(alpha, 6);
  }
});

test.prop([fc.constantFrom(...free), leak, fc.double({ min: 0.16, max: 0.75, noNaN: true })])(
  'a driver has the boxes of the textbook, or none',
  (type, QL, Qts) => {
    const { from, to } = type.free!;
    const needed = (parameter: number) => textbookBoxes(shapeAt(type, parameter), QL);
    const grid = Array.from({ length: 61 }, (_, i) => from + ((to - from) * i) / 60);
    const sides = grid.map((parameter) => needed(parameter).map(({ QT }) => QT > Qts));
    const wanted = sides
      .slice(1)
      .filter((side, i) => side.length === 1 && sides[i]!.length === 1 && side[0] !== sides[i]![0]);
    // Drivers at the very end of a range are left out: rounding decides whether they have a box.
    const near = [from, to].some((end) => needed(end).some(({ QT }) => Math.abs(QT / Qts - 1) < 1e-3));
    fc.pre(!near);
    const found = solveAlignment(
      type,
      ventedFamily,
      { drivers: driverOf(Qts), ...(QL > 0 && { QL }) },
      { air: paperAir },
    );
    const boxes = found.ok ? [found, ...found.others] : [];
    expect(boxes.length).toBe(wanted.length);
    for (const { system, f3 } of boxes) {
      const ratios = ventedRatios(system.spec, paperAir);
      expect(ratios.QT).toBeCloseTo(Qts, 9);
      if (!f3.ok) continue;
      // The level at f3 by the printed polynomial: half power.
      const [b1, b2, b3] = printedCoefficients({ QL, Qts, h: ratios.h, alpha: ratios.alpha });
      const x = f3.frequency / (fs * Math.sqrt(ratios.h));
      const size = Math.hypot(x ** 4 - b2 * x ** 2 + 1, b3 * x - b1 * x ** 3);
      expect(20 * Math.log10(x ** 4 / size)).toBeCloseTo(-10 * Math.log10(2), 6);
    }
  },
);

// At the very end the box of C4 has no limit, and at a QL of 2 hardly any driver is beyond it.
test.prop([fc.constantFrom(quasiThirdOrder, chebyshev(4)), fc.double({ min: 2.2, max: 4, noNaN: true })], {
  numRuns: 20,
})('a driver near the end of what a leaky box takes has its box', (type, QL) => {
  const { from, to } = type.free!;
  const grid = Array.from({ length: 81 }, (_, i) => from + ((to - from) * i) / 80);
  const needed = grid.flatMap((parameter) => textbookBoxes(shapeAt(type, parameter), QL).map(({ QT }) => QT));
  const input = { drivers: driverOf(0.97 * Math.max(...needed)), QL };
  expect(solveAlignment(type, ventedFamily, input, { air: paperAir }).ok).toBe(true);
});
