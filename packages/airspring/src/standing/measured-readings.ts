import type { Fault } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { estimatedDriverVolume } from '@airspring/core/space';
import type { Faultless } from '../brief/faultless.js';
import type { ReadBrief } from '../brief/schema.js';
import type { ReadStanding } from './fields.js';
import { airTaken, WALL } from './tube.js';

/** A driver as a brief may tell it. */
export type Sheet = NonNullable<NonNullable<Faultless<ReadBrief>['drivers']>[number]>;
/** A brief, as far as it was read. */
export type Read = Faultless<ReadBrief> & { readonly standing?: Faultless<ReadStanding['standing']> };

/** What is read, one number each. */
export interface Readings {
  readonly lowerPeak: number;
  readonly dip: number;
  readonly upperPeak: number;
  readonly flankFrequency: number;
  readonly peakImpedance: number;
  readonly flankImpedance: number;
  readonly Re: number;
  readonly coneDiameter: number;
  readonly air: number;
  /** 1/QL of its leaks. It is not read, but assumed: a reading whose ends are no leak and the most. */
  readonly leak: number;
}

/** How many drivers share the readings, and how. */
export interface Shared {
  readonly series: number;
  readonly parallel: number;
  readonly isobaric: boolean;
}

/** The readings of a brief, or the faults of what is missing. */
export function readingsOf({ standing, drivers = [] }: Read, faults: Fault[]): Omit<Readings, 'leak'> | undefined {
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
    const { diameter = 0, length = 0, wall = WALL, count = 1 } = vent ?? {};
    return sum + airTaken({ diameter, length, wall, count }, t);
  }, 0);
  const whole = (width - less) * (height - less) * (depth - less);
  const net = whole - bracing - (each * series * parallel) / (isobaric ? 2 : 1) - tubes;
  return net > 0 ? net : undefined;
}

/** How the drivers of a brief share its readings. */
export const sharedOf = (
  wiring: { readonly series?: number; readonly parallel?: number; readonly isobaric?: boolean } = {},
): Shared => ({
  series: wiring.series ?? 1,
  parallel: wiring.parallel ?? 1,
  isobaric: wiring.isobaric ?? false,
});
