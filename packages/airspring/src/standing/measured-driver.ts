import type { Air } from '@airspring/core/air';
import { ventedImpedance, ventedImpedanceQuality } from '@airspring/core/enclosure';
import { type Fault, isInputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { estimatedDriverVolume } from '@airspring/core/space';
import { sheetOnly } from '../brief/driver-fields.js';
import type { Faultless } from '../brief/faultless.js';
import type { ReadBrief } from '../brief/schema.js';
import type { ReadStanding } from './fields.js';
import { WITHIN } from './measured-fields.js';

/** What follows for each driver from the impedance of its box, in SI units. */
export const followed = ['fs', 'Qes', 'Qms', 'Qts', 'Vas', 'Sd', 'Mms', 'Cms', 'Rms', 'Bl', 'Re'] as const;
type Followed = Readonly<Record<(typeof followed)[number], number>>;

/** Drivers known from the impedance of their box, not from a sheet. */
export interface MeasuredDriver {
  readonly values: readonly {
    readonly field: (typeof followed)[number];
    readonly value: number;
    /** Where it lies if each reading is off by what is stated, independently of the others. */
    readonly from: number;
    readonly to: number;
  }[];
  readonly within: {
    readonly frequency: number;
    readonly length: number;
    readonly impedance: number;
    readonly air: number;
  };
  /** Whether how well it was measured is assumed, in whole or in part. */
  readonly withinAssumed: boolean;
  /** What neither a sheet nor the measurement tells. */
  readonly open: readonly string[];
}

/** Fields of a sheet, any of which makes a driver one with a sheet. */
const SHEET = ['fs', 'Qts', 'Qes', 'Qms', 'Vas', 'Mms', 'Cms', 'Rms', 'Bl', 'sensitivity'] as const;

type Sheet = NonNullable<NonNullable<Faultless<ReadBrief>['drivers']>[number]>;
type Read = Faultless<ReadBrief> & { readonly standing?: Faultless<ReadStanding['standing']> };

/** What is read, one number each. */
interface Readings {
  readonly lowerPeak: number;
  readonly dip: number;
  readonly upperPeak: number;
  readonly flankFrequency: number;
  readonly peakImpedance: number;
  readonly flankImpedance: number;
  readonly Re: number;
  readonly coneDiameter: number;
  readonly air: number;
}

/** How many drivers share the readings, and how. */
interface Shared {
  readonly series: number;
  readonly parallel: number;
  readonly isobaric: boolean;
}

export const withoutSheet = (driver: Faultless<Sheet>): boolean => SHEET.every((field) => driver[field] === undefined);

/** The values of each of several drivers alike, from readings of all together. */
function valuesOf(read: Readings, { series, parallel, isobaric }: Shared, air: Air): Followed {
  const { lowerPeak, dip, upperPeak, flankFrequency, peakImpedance, flankImpedance, coneDiameter } = read;
  const peaks = {
    lowerPeak: si('frequency', lowerPeak),
    dip: si('frequency', dip),
    upperPeak: si('frequency', upperPeak),
  };
  const { Qes, Qms, Qts } = ventedImpedanceQuality({
    ...peaks,
    peakImpedance: si('resistance', peakImpedance),
    flankFrequency: si('frequency', flankFrequency),
    flankImpedance: si('resistance', flankImpedance),
    Re: si('resistance', read.Re),
  });
  // Two drivers one behind the other move as one: half as compliant, and twice as heavy.
  const behind = isobaric ? 2 : 1;
  const fronts = (series * parallel) / behind;
  const Sd = (Math.PI / 4) * coneDiameter ** 2;
  const front = ventedImpedance(
    { ...peaks, netVolume: si('volume', read.air / fronts), coneArea: si('coneArea', Sd) },
    air,
  );
  const fs = front.fs as number;
  const Cms = behind * (front.Cms as number);
  const Mms = (front.Mms as number) / behind;
  const Re = (read.Re * parallel) / series;
  const w = 2 * Math.PI * fs;
  return {
    fs,
    Qes,
    Qms,
    Qts,
    Vas: behind * (front.Vas as number),
    Sd,
    Mms,
    Cms,
    Rms: (w * Mms) / Qms,
    Bl: Math.sqrt((w * Mms * Re) / Qes),
    Re,
  };
}

/** Values with the ranges in which they lie: each reading moved alone to both ends, the moves added as independent ones are. */
function rangesOf(
  read: Readings,
  { frequency, length, impedance, air: volume }: MeasuredDriver['within'],
  of: (readings: Readings) => Followed,
): MeasuredDriver['values'] {
  const by: Readings = {
    lowerPeak: frequency,
    dip: frequency,
    upperPeak: frequency,
    flankFrequency: frequency,
    peakImpedance: impedance * read.peakImpedance,
    flankImpedance: impedance * read.flankImpedance,
    Re: impedance * read.Re,
    coneDiameter: length,
    air: volume,
  };
  const value = of(read);
  const ends = (Object.keys(by) as (keyof Readings)[]).flatMap((name) =>
    by[name] > 0 ? [[-1, 1].map((sign) => of({ ...read, [name]: read[name] + sign * by[name] }))] : [],
  );
  return followed.map((field) => {
    const off = (sign: 1 | -1) =>
      Math.hypot(...ends.map((pair) => Math.max(0, ...pair.map((end) => sign * (end[field] - value[field])))));
    return { field, value: value[field], from: value[field] - off(-1), to: value[field] + off(1) };
  });
}

/** The readings of a brief, or the faults of what is missing. */
function readingsOf({ standing, drivers = [] }: Read, faults: Fault[]): Readings | undefined {
  const { measured = {}, vents = [] } = standing ?? {};
  const [sheet] = drivers;
  const { peaks, tuning, peakImpedance, flank, Re } = measured;
  const missing = (path: string, expected: string, remedy: string): undefined => {
    faults.push({ code: 'empty', path, got: undefined, expected, remedy });
    return undefined;
  };
  const instead = 'Measure it, or give the data of the sheet of the driver.';
  const at = (name: string) => `standing.measured.${name}`;
  const [lowerPeak, upperPeak] = peaks ?? [];
  if (vents.length === 0)
    missing('standing.vents', 'a vent, since the impedance of a vented box tells of its drivers', instead);
  if (lowerPeak === undefined || upperPeak === undefined) missing(at('peaks'), 'both peaks of the impedance', instead);
  if (tuning === undefined) missing(at('tuning'), 'the dip between the two peaks', instead);
  if (peakImpedance === undefined) missing(at('peakImpedance'), 'the magnitude at the higher peak', instead);
  if (flank?.frequency === undefined || flank.impedance === undefined) {
    missing(at('flank'), 'one more reading on the side of a peak: a frequency and an impedance', instead);
  }
  if (Re === undefined) missing(at('Re'), 'the resistance at the terminals, by an ohmmeter', instead);
  const coneDiameter =
    sheet?.coneDiameter ?? (sheet?.Sd === undefined ? undefined : Math.sqrt((4 / Math.PI) * sheet.Sd));
  if (coneDiameter === undefined) {
    missing('drivers[0].coneDiameter', 'the diameter of the cone and half its surround', 'Measure it across the cone.');
  }
  const air = netAir(standing ?? {}, sheet);
  if (
    faults.length > 0 ||
    air === undefined ||
    lowerPeak === undefined ||
    upperPeak === undefined ||
    tuning === undefined ||
    peakImpedance === undefined ||
    flank?.frequency === undefined ||
    flank.impedance === undefined ||
    Re === undefined ||
    coneDiameter === undefined
  ) {
    return undefined;
  }
  return {
    lowerPeak,
    dip: tuning,
    upperPeak,
    flankFrequency: flank.frequency,
    peakImpedance,
    flankImpedance: flank.impedance,
    Re,
    coneDiameter,
    air,
  };
}

/** The air that was in the box when it was measured; `undefined` where its sizes have faults. */
function netAir(
  standing: Faultless<ReadStanding['standing']>,
  sheet: Faultless<Sheet> | undefined,
): number | undefined {
  if (standing.air !== undefined) return standing.air;
  const { inner, outer, panelThickness: t = 0, vents = [], bracing = 0 } = standing;
  const edges = inner ?? outer;
  const less = inner ? 0 : 2 * t;
  const { width, height, depth } = edges ?? {};
  if (width === undefined || height === undefined || depth === undefined) return undefined;
  const { wirings: [wiring] = [], displacedVolume, cutoutDiameter, depth: deep } = sheet ?? {};
  const { series, parallel, isobaric } = sharedOf(wiring);
  const each =
    displacedVolume ??
    (cutoutDiameter === undefined || deep === undefined
      ? 0
      : estimatedDriverVolume(si('length', cutoutDiameter), si('length', Math.max(0, deep - t))));
  const tubes = vents.reduce((sum, vent) => {
    const { diameter = 0, length = 0, wall = 3e-3, count = 1 } = vent ?? {};
    return sum + (count * Math.PI * (diameter + 2 * wall) ** 2 * Math.max(0, length - t)) / 4;
  }, 0);
  const whole = (width - less) * (height - less) * (depth - less);
  const net = whole - bracing - (each * series * parallel) / (isobaric ? 2 : 1) - tubes;
  return net > 0 ? net : undefined;
}

const sharedOf = (
  wiring: { readonly series?: number; readonly parallel?: number; readonly isobaric?: boolean } = {},
) => ({
  series: wiring.series ?? 1,
  parallel: wiring.parallel ?? 1,
  isobaric: wiring.isobaric ?? false,
});

/** Where the readings of core stand in a brief. */
const PLACES: Readonly<Record<string, string>> = {
  'impedance.peakImpedance': 'standing.measured.peakImpedance',
  'impedance.flankImpedance': 'standing.measured.flank.impedance',
  'impedance.flankFrequency': 'standing.measured.flank.frequency',
  'impedance.dip': 'standing.measured.tuning',
};

/** What stays open without a sheet, and what that leaves out of the answer. */
const OPEN: Readonly<Record<(typeof sheetOnly)[number], string>> = {
  Xmax: 'the travel of the cone (Xmax): no limit on the travel is judged',
  Pe: 'the heat that the coil bears (Pe): no limit on the heat is judged',
  outerDiameter: 'the diameter of the frame',
  cutoutDiameter: 'the cutout: whether a tube passes it is not known',
  depth: 'the depth of the driver: measure whether a tube clears it',
};

/** What was found of the driver of a brief that gives no sheet, with its faults; `undefined` where it gives one. */
export function measuredDriver(brief: unknown, air: Air, faults: Fault[]): MeasuredDriver | undefined {
  const read = brief as Read;
  const [sheet] = read.drivers ?? [];
  if (sheet === undefined || read.standing === undefined || !withoutSheet(sheet)) return undefined;
  if (read.standing.measured === undefined) {
    const expected = 'the data of its sheet, or the impedance of its box';
    const remedy = 'Give fs, Qes, Qms, Vas, Sd and Re; or measure the impedance, and tell it in standing.measured.';
    faults.push({ code: 'empty', path: 'drivers[0]', got: 'neither', expected, remedy });
    return undefined;
  }
  const found = readingsOf(read, faults);
  if (found === undefined) return undefined;
  const shared = sharedOf(sheet.wirings?.[0]);
  const told = read.standing.measured.within ?? {};
  const within = {
    frequency: told.frequency ?? WITHIN.frequency,
    length: told.length ?? WITHIN.length,
    impedance: told.impedance ?? WITHIN.impedance,
    air: told.air ?? WITHIN.air * found.air,
  };
  try {
    const values = rangesOf(found, { frequency: 0, length: 0, impedance: 0, air: 0 }, (one) =>
      valuesOf(one, shared, air),
    );
    const open = sheetOnly.filter((name) => sheet[name] === undefined).map((name) => OPEN[name]);
    const withinAssumed = Object.keys(told).length < 4;
    try {
      return { values: rangesOf(found, within, (one) => valuesOf(one, shared, air)), within, withinAssumed, open };
    } catch (error) {
      if (!isInputError(error)) throw error;
      const expected = 'readings that differ by more than what they may be off';
      const remedy = 'Measure more finely, or state how well it was measured.';
      faults.push({
        code: 'inconsistent',
        path: 'standing.measured.within',
        got: read.standing.measured.within,
        expected,
        remedy,
      });
      return { values, within, withinAssumed, open };
    }
  } catch (error) {
    if (!isInputError(error)) throw error;
    for (const fault of error.faults) faults.push({ ...fault, path: PLACES[fault.path] ?? 'standing.measured' });
    return undefined;
  }
}

/** The data of a driver that follow, as a sheet would tell them. */
export const dataOf = ({ values }: MeasuredDriver) =>
  Object.fromEntries(
    values
      .filter(({ field }) => !['Qes', 'Qms', 'Qts', 'fs', 'Vas', 'Sd'].includes(field))
      .map(({ field, value }) => [field, value]),
  );
