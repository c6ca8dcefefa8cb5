import type { Driver } from '@airspring/core/driver';
import { type ClosedBoxInput, closedBox, type System, type VentedBoxInput, ventedBox } from '@airspring/core/enclosure';
import { type Frequency, si } from '@airspring/core/quantity';
import * as fc from 'fast-check';
import { absurdDriverArbitrary, accepted, driverArbitrary } from './driver.js';

const spread = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map((x) => Math.exp(x));

const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const drop = <T extends object>(record: T) =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));

const closedFields = {
  netVolume: spread(2e-3, 500e-3),
  QL: some(spread(3, 100)),
  QA: some(spread(3, 200)),
  sourceResistance: some(spread(0.01, 3)),
};

/** Closed boxes of 2 to 500 litres. */
export const closedBoxArbitrary: fc.Arbitrary<ClosedBoxInput> = fc
  .record({ drivers: driverArbitrary, fillGain: some(spread(1, 1.4)), ...closedFields })
  .map((record) => drop(record) as unknown as ClosedBoxInput);

/** Vented boxes of 2 to 500 litres, tuned to 12 to 80 Hz. */
export const ventedBoxArbitrary: fc.Arbitrary<VentedBoxInput> = fc
  .record({
    drivers: driverArbitrary,
    fb: spread(12, 80),
    ventArea: some(spread(5e-4, 500e-4)),
    QP: some(spread(5, 200)),
    ...closedFields,
  })
  .map((record) => drop(record) as unknown as VentedBoxInput);

/** Either family. */
export const systemArbitrary: fc.Arbitrary<System> = fc.oneof(
  closedBoxArbitrary.map((input) => closedBox(input) as System),
  ventedBoxArbitrary.map((input) => ventedBox(input) as System),
);

/** Closed and vented boxes of any accepted magnitudes, to look for what breaks. */
export const absurdSystemArbitrary: fc.Arbitrary<System> = fc
  .record({
    drivers: absurdDriverArbitrary,
    netVolume: accepted('volume'),
    fb: some(accepted('frequency')),
    ventArea: accepted('area'),
    QL: some(accepted('ratio')),
    QA: some(accepted('ratio')),
    QP: some(accepted('ratio')),
    sourceResistance: some(accepted('resistance')),
  })
  .map(({ fb, QP, ventArea, ...rest }): System => {
    const shared = drop(rest) as unknown as ClosedBoxInput;
    if (fb === undefined) return closedBox(shared) as System;
    return ventedBox({ ...shared, fb, ventArea, ...(QP !== undefined && { QP }) }) as System;
  });

/** A frequency at which boxes play. */
export const bassFrequency: fc.Arbitrary<Frequency> = spread(5, 500).map((f) => si('frequency', f));

/** The same driver without the inductances of its coil. */
export const withoutCoil = ({ Le: _1, coil: _2, suspension: _3, ...rest }: Driver): Driver => rest;
