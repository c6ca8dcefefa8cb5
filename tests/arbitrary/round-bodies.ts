import { si } from '@airspring/core/quantity';
import { faces, type RoundBodyInput } from '@airspring/core/space';
import * as fc from 'fast-check';

/** Lengths of whole millimetres, from and to metres. */
export const wholeLength = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1e3), max: Math.round(max * 1e3) }).map((mm) => si('length', mm / 1e3));

/** One face or two. */
export const someFaces = fc.subarray([...faces], { minLength: 1, maxLength: 2 });

/** Drivers on such faces, by the range of their cutouts. */
export const roundBody = (least: number, greatest: number) =>
  fc
    .record({ cutout: wholeLength(least, greatest), depth: wholeLength(0.03, 0.16), faces: someFaces })
    .map(({ cutout, depth, faces }) => ({
      cutoutDiameter: cutout,
      outerDiameter: si('length', cutout + 0.02),
      depth,
      faces,
    })) satisfies fc.Arbitrary<RoundBodyInput>;
