import { butterworthShape, type Filter, highPass, shapeByQ } from '@airspring/core/filter';
import { si } from '@airspring/core/quantity';
import * as fc from 'fast-check';

const spread = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map((x) => Math.exp(x));

/** High-passes as people use them under a bass box. */
export const filterArbitrary: fc.Arbitrary<Filter> = fc
  .record({ corner: spread(5, 500), Q: spread(0.3, 5), other: spread(0.3, 5), which: fc.nat(7) })
  .map(({ corner: hertz, Q, other, which }) => {
    const corner = si('frequency', hertz);
    if (which < 4) return highPass(butterworthShape(which + 1), corner);
    if (which === 4) return highPass(shapeByQ({ order: 1 }), corner);
    if (which === 7) return highPass(shapeByQ({ order: 4, Q: [Q, other] }), corner);
    return highPass(shapeByQ({ order: which === 5 ? 2 : 3, Q }), corner);
  });

/** Any number: usual, extreme, impossible. */
const wild = fc.oneof(
  fc.double(),
  fc.double({ min: 0.01, max: 100, noNaN: true }),
  fc.constantFrom(0, 1, 1e-4, 1e7, 50, 0.05),
);

/** Inputs of the right type and of any size. */
export const wildHighPass = fc.record({
  order: fc.constantFrom(1, 2, 3, 4),
  corner: fc.oneof(
    wild,
    wild.map((x) => `${x} Hz`),
  ),
  Q: fc.oneof(wild, fc.tuple(wild, wild), fc.constant(undefined)),
});

export const wildFilter: fc.Arbitrary<Filter> = fc.record({
  kind: fc.constant('high-pass' as const),
  name: fc.string(),
  numerator: fc.array(wild, { maxLength: 6 }),
  denominator: fc.array(wild, { maxLength: 10 }),
});
