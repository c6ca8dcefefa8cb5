import type { Driver } from '@airspring/core/driver';
import { closedBox, type System } from '@airspring/core/enclosure';
import { greatestLevel, heatLimit, lowestSafeFrequency, travelLimit } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { referenceLevel } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import { alignments, closedOf, fs, paperAir, physical, ventedOf } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

const XMAX = 0.008;
const withTravel = (system: System): Driver & { Xmax: number } => {
  const { driver } = (system.spec as { drivers: { driver: Driver } }).drivers;
  return { ...driver, Xmax: si('displacementPeak', XMAX) };
};
/** Acoustic power of a level at 1 m in half space, in the air of the papers. */
const power = (level: number) => (10 ** (level / 10) * 2 * Math.PI * 20e-6 ** 2) / (1.18 * 345);

/** Power in the pass band at the greatest drive that keeps within the travel at every frequency of a grid. */
function travelLimitedPower(system: System, frequencies: ArrayLike<number>): number {
  const { driveVoltageRms } = greatestLevel(system, travelLimit(withTravel(system)), frequencies);
  return power(referenceLevel(system) + 20 * Math.log10(Math.min(...driveVoltageRms)));
}
const peakVolume = (system: System) => withTravel(system).Sd * XMAX;

const closedQ = [0.5, 0.7071067812, 0.8, 1, 1.1, 1.2, 1.5];
check('limit.power.closed', {
  formula: 'limit/greatestLevel',
  source: { key: 'small1972closed1', locator: 'displacement-limited acoustic power rating, k_P = P/(f3⁴ Vd²) by Qtc' },
  status: 'derived',
  kind: 'table',
  given: {
    Qtc: { value: closedQ, unit: '1' },
    f3: {
      value: [1.553773974, 1, 0.8971600803, 0.7861513778, 0.7567467969, 0.7358154619, 0.6993452693],
      unit: 'f3/fc',
    },
    // Where the displacement is largest: at 0 Hz up to 0.7071, then at the square root of 1 − 1/2Qtc².
    at: { value: closedQ.map((Q) => Math.sqrt(Math.max(1e-10, 1 - 1 / (2 * Q * Q)))), unit: 'f/fc' },
  },
  got: ({ Qtc, f3, at }) => {
    const system = closedOf({ Qtc, fc: 50 });
    return (
      travelLimitedPower(system, [5e-4, 1, 10, ...(at > 0.3 ? [at * 50] : [])]) /
      ((f3 * 50) ** 4 * peakVolume(system) ** 2)
    );
  },
  expected: [0.07278152497, 0.4242018143, 0.623443952, 0.8329310759, 0.848146059, 0.8304602706, 0.7006012621],
  unit: 'W s⁴/m⁶',
  tolerance: { relative: 1e-8, why: 'fourth power of a cut-off of ten digits' },
});

const rows = alignments();
check('limit.power.vented', {
  formula: 'limit/greatestLevel',
  source: {
    key: 'small1973vented2',
    locator: 'displacement-limited power rating, equation (36), largest displacement above the box resonance',
  },
  status: 'derived',
  kind: 'table',
  given: {
    QL: { value: rows.QL, unit: '1, 0 for no leak' },
    Qts: { value: rows.Qts, unit: '1' },
    h: { value: rows.h, unit: '1' },
    alpha: { value: rows.alpha, unit: '1' },
    f3: { value: rows.f3, unit: 'f3/fs' },
    at: { value: rows.fXmax, unit: 'f/fs' },
  },
  got: ({ f3, at, ...row }) => {
    const system = ventedOf(row);
    // Around the published frequency of the largest displacement: were it elsewhere, its neighbours would bind first.
    // Narrow, since with QL 3 and Qts 0.6 the dip by the vent is so shallow that the cone moves more below it, at 0.9.
    const near = logarithmicGrid(at * fs * 0.97, at * fs * 1.03, 401);
    return travelLimitedPower(system, near) / ((f3 * fs) ** 4 * peakVolume(system) ** 2);
  },
  expected: rows.kP,
  unit: 'W s⁴/m⁶',
  tolerance: { relative: 2e-8, why: 'fourth power of a cut-off of ten digits' },
});

/** Two closed boxes of given alignment by their sheets: power and level at the limit of travel, and the heat that goes with it. */
const rated = {
  fs: { value: [25, 30], unit: 'Hz' },
  Vas: { value: [0.1, 0.06], unit: 'm³' },
  Qes: { value: [0.4, 0.5], unit: '1' },
  Qtc: { value: [Math.SQRT1_2, 1], unit: '1' },
  fc: { value: [45, 55], unit: 'Hz' },
  diameter: { value: [0.25, 0.2], unit: 'm' },
  Xmax: { value: [6, 5], unit: 'mm' },
  heat: { value: [40.17930208, 23.06093095], unit: 'W, P_ER' },
};
type Rated = { [K in keyof typeof rated]: number };
/** The driver resonates at fs; box and losses give fc and Qtc: the suspension takes what damping is left to it. */
function ratedBox({ fs, Vas, Qes, Qtc, fc, diameter, Xmax, heat }: Rated) {
  const rise = fc / fs;
  const Qms = 1 / (rise / Qtc - 1 / Qes);
  const sheet = { fs, Vas, Qes, Qms: Qms > 0 ? Qms : 1e4, Sd: (Math.PI / 4) * diameter ** 2, Re: 6 };
  const drivers = { ...physical(sheet, paperAir), Xmax: si('displacementPeak', Xmax / 1e3), Pe: si('power', heat) };
  return {
    drivers,
    system: closedBox({ drivers, netVolume: si('volume', Vas / (rise ** 2 - 1)) }, paperAir) as System,
  };
}
check('limit.heat.level', {
  formula: 'limit/heatLimit',
  source: { key: 'small1972direct', locator: 'reference efficiency η0; level of η0 P_ER in half space' },
  status: 'derived',
  kind: 'example',
  given: rated,
  got: (row) => {
    const { drivers, system } = ratedBox(row);
    // So far above resonance that the impedance is Re: the electrical power is then the heat.
    const { levelHalfSpace } = greatestLevel(system, heatLimit(drivers), [2e5]);
    return levelHalfSpace[0]!;
  },
  expected: [103.8812612, 100.6578554],
  unit: 'dB',
  tolerance: { absolute: 2e-6, why: 'the asymptote is read at 200 kHz' },
});

check('limit.lowest-safe-frequency', {
  formula: 'limit/lowestSafeFrequency',
  source: { key: 'small1972closed1', locator: 'displacement function 1/((1 − u²)² + u²/Q²)½, u = f/fc, solved for u' },
  status: 'derived',
  kind: 'example',
  given: {
    Qtc: { value: [0.5, 0.7071067812, 1, 1.5], unit: '1' },
    share: { value: [0.8, 0.5, 0.3, 0.1], unit: 'of the displacement at 0 Hz' },
  },
  got: ({ Qtc, share }) => {
    const system = closedOf({ Qtc, fc: 50 });
    const drivers = withTravel(system);
    const still = greatestLevel(system, travelLimit(drivers), [1e-3]).driveVoltageRms[0]!;
    const found = lowestSafeFrequency(system, travelLimit(drivers), {
      driveVoltageRms: si('voltageRms', still / share),
    });
    return found.ok ? found.frequency / 50 : Number.NaN;
  },
  // u⁴ + (1/Q² − 2) u² + 1 − 1/share² = 0
  expected: [0.5, 0.7071067812, 1, 1.5].map((Q, i) => {
    const share = [0.8, 0.5, 0.3, 0.1][i]!;
    const b = 1 / Q ** 2 - 2;
    return Math.sqrt((-b + Math.sqrt(b * b - 4 * (1 - 1 / share ** 2))) / 2);
  }),
  unit: 'f/fc',
  tolerance: { relative: 2e-8, why: 'a thousandth of a hertz stands for 0 Hz' },
});
