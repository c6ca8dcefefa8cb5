import type { PassiveRadiator } from '@airspring/core/driver';
import type { PassiveRadiatorBoxInput } from '@airspring/core/enclosure';
import * as fc from 'fast-check';
import { absurdDriverArbitrary, accepted, driverArbitrary } from './driver.js';

/** Even in the logarithm: small and large are equally likely. */
const spread = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map((x) => Math.exp(x));

const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const drop = <T extends object>(record: T) =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));

/** Radiators as they are built: drawn as area, mass per area, resonance and Q, the physical parameters follow. */
export const passiveRadiatorArbitrary: fc.Arbitrary<PassiveRadiator> = fc
  .record({
    Sd: spread(25e-4, 1300e-4),
    massPerArea: spread(1, 8),
    fs: spread(8, 60),
    Qms: spread(2, 20),
    Xmax: some(spread(2e-3, 40e-3)),
  })
  .map(({ Sd, massPerArea, fs, Qms, Xmax }) => {
    const Mms = Sd * massPerArea;
    const reactance = 2 * Math.PI * fs * Mms;
    return drop({ Sd, Mms, Cms: 1 / (reactance * 2 * Math.PI * fs), Rms: reactance / Qms, Xmax }) as never;
  });

const boxes = (
  drivers: typeof driverArbitrary,
  radiator: fc.Arbitrary<PassiveRadiator>,
  rest: Readonly<Record<string, fc.Arbitrary<unknown>>>,
): fc.Arbitrary<PassiveRadiatorBoxInput> =>
  fc
    .record({ drivers, radiator, count: some(fc.integer({ min: 1, max: 4 })), ...rest })
    .map((record) => drop(record) as never);

/** Boxes of 2 to 500 litres with one to four radiators. */
export const passiveRadiatorBoxArbitrary = boxes(driverArbitrary, passiveRadiatorArbitrary, {
  netVolume: spread(2e-3, 500e-3),
  addedMass: some(spread(1e-3, 1)),
  QL: some(spread(3, 100)),
  QA: some(spread(3, 200)),
  sourceResistance: some(spread(0.01, 3)),
});

/** The same of any accepted magnitudes, to look for what breaks. */
export const absurdPassiveRadiatorBoxArbitrary = boxes(
  absurdDriverArbitrary,
  fc.record({
    Sd: accepted('coneArea'),
    Mms: accepted('mass'),
    Cms: accepted('compliance'),
    Rms: accepted('mechanicalResistance'),
  }),
  {
    netVolume: accepted('volume'),
    addedMass: some(accepted('mass')),
    QL: some(accepted('ratio')),
    QA: some(accepted('ratio')),
    sourceResistance: some(accepted('resistance')),
  },
);
