import type { Air } from '@airspring/core/air';
import { boxCompliance, lossyVentedImpedance } from '@airspring/core/enclosure';
import { InputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import type { WITHIN } from './measured-fields.js';
import type { Readings, Shared } from './measured-readings.js';

/** What follows for each driver from the impedance of its box, in SI units. */
export const followed = ['fs', 'Qes', 'Qms', 'Qts', 'Vas', 'Sd', 'Mms', 'Cms', 'Rms', 'Bl', 'Re'] as const;
type Followed = Readonly<Record<(typeof followed)[number], number>>;

/** What each reading of a sort may be off, in SI units; impedances as a ratio. */
type Within = Readonly<Record<keyof typeof WITHIN, number>>;

/** As good as no leak: the least that a brief can say. */
export const NO_LEAK = 1e-4;

/** More than the suspension of any driver (common practice): what a higher peak needs is less leak. */
export const GREATEST_QMS = 100;

/** The losses of a box besides its leaks, as quality factors. */
export interface OtherLosses {
  readonly QA?: number;
  readonly QP?: number;
}

/** The values of each of several drivers alike, from readings of all together, with the tuning and the leak of their box. */
export function valuesOf(read: Readings, { series, parallel, isobaric }: Shared, others: OtherLosses, air: Air) {
  const { coneDiameter } = read;
  const impedance = {
    lowerPeak: si('frequency', read.lowerPeak),
    dip: si('frequency', read.dip),
    upperPeak: si('frequency', read.upperPeak),
    peakImpedance: si('resistance', read.peakImpedance),
    flankFrequency: si('frequency', read.flankFrequency),
    flankImpedance: si('resistance', read.flankImpedance),
    Re: si('resistance', read.Re),
    ...others,
  };
  const told = lossyVentedImpedance({ ...impedance, QL: 1 / read.leak });
  const fits = told.ok && told.Qms > 0 && told.Qms <= GREATEST_QMS;
  const found = fits ? told : lossyVentedImpedance({ ...impedance, Qms: GREATEST_QMS });
  if (!found.ok || !(1 / found.QL >= 0 && 1 / found.QL < read.leak * (1 + 1e-6))) {
    const expected = 'the impedance of some driver in a box with the losses stated';
    const remedy = 'Read the impedance again, and check QL, QA and QP of the box.';
    throw new InputError([{ code: 'inconsistent', path: 'impedance', got: 'that of none', expected, remedy }]);
  }
  const { fb, fs, alpha, Qes, Qms, Qts } = found;
  // Two drivers one behind the other move as one: half as compliant, and twice as heavy.
  const behind = isobaric ? 2 : 1;
  const fronts = (series * parallel) / behind;
  const Sd = (Math.PI / 4) * coneDiameter ** 2;
  const volume = read.air / fronts;
  const frontCms = (alpha * boxCompliance(volume, 1, air)) / Sd ** 2;
  const w = 2 * Math.PI * fs;
  const Cms = behind * frontCms;
  const Mms = 1 / (w ** 2 * frontCms) / behind;
  const Re = (read.Re * parallel) / series;
  return {
    fs,
    Qes,
    Qms,
    Qts,
    Vas: behind * alpha * volume,
    Sd,
    Mms,
    Cms,
    Rms: (w * Mms) / Qms,
    Bl: Math.sqrt((w * Mms * Re) / Qes),
    Re,
    fb: fb as number,
    leak: 1 / found.QL,
  };
}

/** Each reading as low and as high as it may be, in its unit. */
export type Ends = Readonly<Record<keyof Readings, readonly [low: number, high: number]>>;

/** Each reading as far off as it may be; the box with no leak, and with the most. */
export function endsOf(read: Readings, { frequency, length, impedance, air }: Within, most: number): Ends {
  const around = (name: keyof Readings, by: number) => [read[name] - by, read[name] + by] as const;
  return {
    lowerPeak: around('lowerPeak', frequency),
    dip: around('dip', frequency),
    upperPeak: around('upperPeak', frequency),
    flankFrequency: around('flankFrequency', frequency),
    peakImpedance: around('peakImpedance', impedance * read.peakImpedance),
    flankImpedance: around('flankImpedance', impedance * read.flankImpedance),
    Re: around('Re', impedance * read.Re),
    coneDiameter: around('coneDiameter', length),
    air: around('air', air),
    leak: [NO_LEAK, most],
  };
}

/** Values without a range. */
export const valuesAlone = (value: Followed) =>
  followed.map((field) => ({ field, value: value[field], from: value[field], to: value[field] }));

/** Leaks that are tried between none and the most: Qes and Vas are least somewhere between. */
const LEAKS = 32;

/**
 * Values with the ranges in which they lie: each reading moved alone to both ends, the moves added as independent ones are. What
 * the leak moves is no error of reading and is added whole.
 */
export function rangesOf(read: Readings, { leak: [none, most], ...ends }: Ends, of: (readings: Readings) => Followed) {
  const value = of(read);
  const names = (Object.keys(ends) as (keyof typeof ends)[]).filter((name) => ends[name][0] < ends[name][1]);
  const moved = names.map((name) => ends[name].map((end) => of({ ...read, [name]: end })));
  const tries = none < most ? LEAKS : 0;
  const leaking = Array.from({ length: tries }, (_, i) =>
    of({ ...read, leak: none + (i / (tries - 1)) * (most - none) }),
  );
  return followed.map((field) => {
    const most = (sign: 1 | -1, found: readonly Followed[]) =>
      Math.max(0, ...found.map((one) => sign * (one[field] - value[field])));
    const off = (sign: 1 | -1) => most(sign, leaking) + Math.hypot(...moved.map((pair) => most(sign, pair)));
    return { field, value: value[field], from: value[field] - off(-1), to: value[field] + off(1) };
  });
}
