import type { LineBoxInput } from '@airspring/core/enclosure';
import * as fc from 'fast-check';
import { absurdDriverArbitrary, accepted, driverArbitrary } from './driver.js';

const spread = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map((x) => Math.exp(x));
const share = fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0.01, max: 1, noNaN: true }));
const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const boxes = (
  drivers: typeof driverArbitrary,
  length: fc.Arbitrary<number>,
  area: fc.Arbitrary<number>,
  flowResistivity: fc.Arbitrary<number>,
): fc.Arbitrary<LineBoxInput> => {
  const taper = fc.constantFrom('conicalTo', 'exponentialTo', 'wedgeTo', undefined);
  const part = fc
    .record({
      length,
      area,
      far: area,
      taper,
      flowResistivity: some(flowResistivity),
      wallLoss: fc.constantFrom(0, 1, 2.5),
    })
    .map(({ far, taper, ...rest }) => (taper === undefined ? rest : { ...rest, [taper]: far }));
  return fc
    .record({
      drivers,
      parts: fc.array(part, { minLength: 1, maxLength: 3 }),
      driver: share,
      place: some(share),
      isOpen: fc.boolean(),
    })
    .map(({ drivers, parts, driver, place, isOpen }) => {
      const total = parts.reduce((sum, { length }) => sum + length, 0);
      const opening = place === undefined ? {} : { at: place * total };
      return { drivers, parts, driverAt: driver * total, ...(isOpen && { opening }) } as unknown as LineBoxInput;
    });
};

/** Lines of one to three parts, as they are built. */
export const lineBoxArbitrary = boxes(driverArbitrary, spread(0.2, 3), spread(20e-4, 2000e-4), spread(100, 20000));

/** The same of any accepted magnitudes, to look for what breaks. */
export const absurdLineBoxArbitrary = boxes(
  absurdDriverArbitrary,
  accepted('length'),
  accepted('area'),
  accepted('flowResistivity'),
);
