import { si } from '@airspring/core/quantity';
import type { FitInput, RoundBodyInput, RoundVentBodyInput } from '@airspring/core/space';
import { faces } from '@airspring/core/space';
import * as fc from 'fast-check';

/** A box with drivers alike and a round vent. */
export type RoundSpace = Omit<FitInput, 'driver' | 'vent'> & {
  readonly driver: RoundBodyInput;
  readonly vent: RoundVentBodyInput & { readonly length: NonNullable<FitInput['vent']>['length'] };
};

/** In tenths of a millimetre, so that touching is as likely as it is in workshops. */
const length = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1e4), max: Math.round(max * 1e4) }).map((tenths) => si('length', tenths / 1e4));
const share = fc.double({ min: 0, max: 1, noNaN: true });

export const sizeArbitrary = (min: number, max: number) =>
  fc.record({ width: length(min, max), height: length(min, max), depth: length(min, max) });

export const thicknessArbitrary = (min: number, max: number) =>
  fc.oneof(
    length(min, max),
    fc.record({
      left: length(min, max),
      right: length(min, max),
      bottom: length(min, max),
      top: length(min, max),
      front: length(min, max),
      back: length(min, max),
    }),
  );

/** Boxes as they are built, tight enough that driver and vent meet: about half of the vents fit. */
export const spaceArbitrary: fc.Arbitrary<RoundSpace> = fc
  .record({
    outer: sizeArbitrary(0.2, 0.5),
    thickness: thicknessArbitrary(0.009, 0.025),
    driver: fc.record({
      outerDiameter: length(0.1, 0.24),
      cut: share,
      depth: length(0.01, 0.3),
      count: fc.constantFrom(1, 1, 1, 2, 3, 4),
      face: fc.constantFrom(...faces),
    }),
    vent: fc.record({
      diameter: length(0.02, 0.11),
      wall: length(0, 0.006),
      rim: length(0, 0.03),
      clearance: length(0, 0.1),
      bend: share,
      length: length(0.02, 1),
      count: fc.constantFrom(1, 1, 1, 2, 3),
      face: fc.constantFrom(...faces),
    }),
    gap: length(0, 0.02),
    edgeMargin: length(0, 0.03),
    cutoutMargin: length(0, 0.01),
  })
  .map(({ outer, thickness, driver, vent, gap, edgeMargin, cutoutMargin }) => {
    const outerDiameter = vent.diameter + 2 * vent.wall;
    return {
      outer,
      thickness,
      gap,
      edgeMargin,
      cutoutMargin,
      driver: {
        outerDiameter: driver.outerDiameter,
        cutoutDiameter: si('length', driver.outerDiameter * (0.75 + 0.25 * driver.cut)),
        depth: driver.depth,
        count: driver.count,
        faces: [driver.face],
      },
      vent: {
        diameter: vent.diameter,
        wall: vent.wall,
        flangeDiameter: si('length', outerDiameter + vent.rim),
        clearance: vent.clearance,
        bendRadius: si('length', outerDiameter * (0.5 + vent.bend)),
        length: vent.length,
        count: vent.count,
        faces: [vent.face],
      },
    };
  });

const any = fc.double({ min: Math.log(1e-6), max: Math.log(1e3), noNaN: true });
const anyLength = any.map((x) => si('length', Math.min(1e3, Math.max(1e-6, Math.exp(x)))));

/** Anything the reader accepts: a micrometre to a kilometre. */
export const absurdSpaceArbitrary: fc.Arbitrary<RoundSpace> = fc.record({
  outer: fc.record({ width: anyLength, height: anyLength, depth: anyLength }),
  thickness: anyLength,
  gap: anyLength,
  edgeMargin: anyLength,
  cutoutMargin: anyLength,
  driver: fc.record({
    outerDiameter: anyLength,
    cutoutDiameter: anyLength,
    depth: anyLength,
    count: fc.integer({ min: 1, max: 4 }),
    faces: fc.subarray([...faces], { minLength: 1 }),
  }),
  vent: fc.record({
    diameter: anyLength,
    wall: anyLength,
    flangeDiameter: anyLength,
    clearance: anyLength,
    bendRadius: anyLength,
    bends: fc.constantFrom('straight' as const, 'one-bend' as const),
    length: anyLength,
    count: fc.integer({ min: 1, max: 3 }),
    faces: fc.subarray([...faces], { minLength: 1 }),
  }),
});
