import type { Air } from '@airspring/core/air';
import { ventedImpedance, ventedImpedanceQuality } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import type { WITHIN } from './measured-fields.js';
import type { Readings, Shared } from './measured-readings.js';

/** What follows for each driver from the impedance of its box, in SI units. */
export const followed = ['fs', 'Qes', 'Qms', 'Qts', 'Vas', 'Sd', 'Mms', 'Cms', 'Rms', 'Bl', 'Re'] as const;
type Followed = Readonly<Record<(typeof followed)[number], number>>;

/** What each reading of a sort may be off, in SI units; impedances as a ratio. */
type Within = Readonly<Record<keyof typeof WITHIN, number>>;

/** The values of each of several drivers alike, from readings of all together. */
export function valuesOf(read: Readings, { series, parallel, isobaric }: Shared, air: Air): Followed {
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

/** How far each reading may be off, in its unit. */
export const offsetsOf = (read: Readings, { frequency, length, impedance, air }: Within): Readings => ({
  lowerPeak: frequency,
  dip: frequency,
  upperPeak: frequency,
  flankFrequency: frequency,
  peakImpedance: impedance * read.peakImpedance,
  flankImpedance: impedance * read.flankImpedance,
  Re: impedance * read.Re,
  coneDiameter: length,
  air,
});

/** Values with the ranges in which they lie: each reading moved alone to both ends, the moves added as independent ones are. */
export function rangesOf(read: Readings, within: Within, of: (readings: Readings) => Followed) {
  const by = offsetsOf(read, within);
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
