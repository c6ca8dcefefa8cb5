import { type Driver, type DriverData, lr2Inductor } from '@airspring/core/driver';
import { type Kind, kinds, type Quantity, si } from '@airspring/core/quantity';
import * as fc from 'fast-check';

/** Even in the logarithm: small and large are equally likely. */
const spread = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map((x) => Math.exp(x));

const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const drop = <T extends object>(record: T) =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));

/** An inductance, with eddy currents if there are any. */
const coilOf = (Le: number | undefined, eddy: { readonly R2: number; readonly L2: number } | undefined) =>
  eddy === undefined ? { Le } : { coil: lr2Inductor({ Le, ...eddy } as never) };

/**
 * Drivers as they are built: three-inch to eighteen-inch cones. Drawn as area, mass per area, fs and Q's, since these
 * are what is alike between sizes; the physical parameters follow.
 */
export const driverArbitrary: fc.Arbitrary<Driver> = fc
  .record({
    Sd: spread(25e-4, 1300e-4),
    massPerArea: spread(0.8, 6),
    fs: spread(15, 120),
    Qms: spread(1.5, 15),
    Qes: spread(0.15, 1.5),
    Re: spread(1.5, 15),
    Le: some(spread(0.05e-3, 3e-3)),
    eddy: some(fc.record({ R2: spread(1, 40), L2: spread(0.1e-3, 3e-3) })),
    Xmax: some(spread(1e-3, 30e-3)),
    Pe: some(spread(5, 1000)),
    frame: some(fc.record({ rim: spread(1.15, 1.3), hole: spread(1.02, 1.12), depth: spread(0.3, 0.6) })),
  })
  .map(({ Sd, massPerArea, fs, Qms, Qes, Re, Le, eddy, Xmax, Pe, frame }) => {
    const Mms = Sd * massPerArea;
    const reactance = 2 * Math.PI * fs * Mms;
    const cone = Math.sqrt((4 * Sd) / Math.PI);
    const sizes = frame && {
      outerDiameter: cone * frame.rim,
      cutoutDiameter: cone * frame.hole,
      depth: cone * frame.depth,
      displacedVolume: cone ** 3 * frame.depth * 0.3,
    };
    const physical = { Sd, Mms, Cms: 1 / (reactance * 2 * Math.PI * fs), Rms: reactance / Qms, Re };
    const Bl = Math.sqrt((reactance * Re) / Qes);
    return drop({ ...physical, Bl, ...coilOf(Le, eddy), Xmax, Pe, ...sizes }) as unknown as Driver;
  });

/** Any magnitude that the library accepts for a kind, however absurd. */
export const accepted = <K extends Kind>(kind: K): fc.Arbitrary<Quantity<K>> => {
  const [least, most] = kinds[kind].range;
  return spread(least, most).map((value) => si(kind, Math.min(most, Math.max(least, value))));
};

/** Records of drivers with any accepted magnitudes, to look for what breaks. */
export const absurdDriverArbitrary: fc.Arbitrary<Driver> = fc
  .record({
    Sd: accepted('coneArea'),
    Mms: accepted('mass'),
    Cms: accepted('compliance'),
    Rms: accepted('mechanicalResistance'),
    Re: accepted('resistance'),
    Bl: accepted('forceFactor'),
    Le: some(accepted('inductance')),
    eddy: some(fc.record({ R2: accepted('resistance'), L2: accepted('inductance') })),
    Xmax: some(accepted('displacementPeak')),
    Pe: some(accepted('power')),
  })
  .map(({ Le, eddy, ...rest }) => drop({ ...rest, ...coilOf(Le, eddy) }) as Driver);

/** Sheets with any of their fields at any accepted magnitude. */
export const absurdDriverDataArbitrary: fc.Arbitrary<DriverData> = fc
  .record({
    fs: some(accepted('frequency')),
    Qts: some(accepted('ratio')),
    Qes: some(accepted('ratio')),
    Qms: some(accepted('ratio')),
    Vas: some(accepted('volume')),
    Sd: some(accepted('coneArea')),
    coneDiameter: some(accepted('length')),
    Mms: some(accepted('mass')),
    Cms: some(accepted('compliance')),
    Rms: some(accepted('mechanicalResistance')),
    Re: some(accepted('resistance')),
    Bl: some(accepted('forceFactor')),
    Xmax: some(accepted('displacementPeak')),
  })
  .map((record) => drop(record) as DriverData);

/** An invented ten-inch driver: no such driver is or was on sale. */
export const tenInchData = {
  name: 'invented ten-inch',
  fs: '27 Hz',
  Qts: 0.36,
  Qes: 0.4,
  Vas: '62 L',
  Sd: '330 cm²',
  Re: '5.6 ohm',
  Le: '0.9 mH',
  Xmax: '9 mm',
  Pe: '200 W',
  outerDiameter: '262 mm',
  cutoutDiameter: '232 mm',
  depth: '118 mm',
} as const satisfies DriverData;
