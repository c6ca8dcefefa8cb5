import type { Fault } from '@airspring/core/fault';
import type { Filter } from '@airspring/core/filter';
import { greatestLevel, travelLimit } from '@airspring/core/limit';
import { type FrequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { referenceLevel, respond } from '@airspring/core/response';
import { type Job, safeFromOf, type Written } from '../job/job.js';
import { passedBy } from '../job/passed.js';
import { isEndOfSearch, lowestReach, reachOf, safeBehind } from '../record/behind-filter.js';
import { type At, loadOf } from '../record/load.js';
import { LOWEST_TONE } from '../record/mechanical.js';
import {
  type CompressionTold,
  compressionOf,
  type TuningTold,
  tuningOf,
  type VentNoiseTold,
  ventNoiseOf,
} from '../record/vent-noise.js';
import { worst } from '../record/worst.js';
import type { Sounding, State } from './state.js';

/**
 * What a box does: how deep and how loud it plays, which limit it reaches first, how fast its air is, and what load it is for the
 * amplifier.
 */
export interface Account {
  /** Air in the box, m³. */
  readonly netVolume: number;
  /** The tuning; for a closed box its resonance and its quality factor. */
  readonly fb?: number;
  readonly fc?: number;
  readonly Qtc?: number;
  /**
   * From here up to the end of the band the response has fallen by at most the wanted fall, Hz. Left out if it has fallen further
   * at the end of the band.
   */
  readonly reach?: number;
  /** Set where that is only the lowest frequency that was looked at. */
  readonly endOfSearch?: true;
  /** The same without the filter in front of the amplifier; left out if there is no filter. */
  readonly reachUnfiltered?: number;
  readonly unfilteredEndOfSearch?: true;
  /** The loudest steady tone at every frequency of the band, dB, with the tone that is weakest and the limit that it reaches. */
  readonly loudest: { readonly level: number; readonly frequency: number; readonly binding: string };
  /** The loudest programme without an equaliser, as its level where the response is flat, judged for tones from 10 Hz up. */
  readonly programme: { readonly level: number; readonly frequency: number; readonly binding: string };
  /** At the wanted level, each at its worst tone of the band. */
  readonly wanted: {
    readonly drive: At;
    /** Watts of that drive into the nominal load. */
    readonly power?: number;
    readonly travel: At;
    readonly airSpeed?: At;
  };
  /** Between which levels it is doubtful whether the vent is heard, each at its worst tone of the band; left out without a vent. */
  readonly noise?: VentNoiseTold;
  /** How far the sound falls behind at the wanted level, since the vent loses; left out without a vent. */
  readonly compression?: CompressionTold;
  /** At the drive that gives the wanted level where the response is flat, each at its worst tone from 10 Hz up. */
  readonly flat: { readonly drive: number; readonly travel: At; readonly airSpeed?: At };
  /** Below this frequency that drive exceeds the travel; left out if it never does. */
  readonly lowestSafe?: number;
  /** The least impedance in the audible bass, and the nominal load that it corresponds to, Ω. */
  readonly leastLoad: At;
  readonly nominalLoad?: number;
}

const BAND = 160;

/** No amplifier gives more, V rms. */
const GREATEST_DRIVE = 1e4;

/** The drive that gives the wanted level where the response is flat, V rms. */
const flatDrive = (level: number, { system }: Sounding): number => 10 ** ((level - referenceLevel(system)) / 20);

/** A level that no drive gives. */
export function faultsOfLevel(written: Written, { wanted }: Job, sounding: Sounding): Fault[] {
  const drive = flatDrive(wanted.level, sounding);
  if (drive <= GREATEST_DRIVE) return [];
  const most = wanted.level - 20 * Math.log10(drive / GREATEST_DRIVE);
  return [
    {
      code: 'out-of-range',
      path: 'wanted.level',
      got: (written.wanted as Written).level,
      expected: `at most ${Math.floor(most)} dB, for which these drivers need 10 kV`,
      remedy: 'Check the level: it is that at 1 m.',
    },
  ];
}

/** What one drive for all tones from 10 Hz up asks: the drive that gives the wanted level where the response is flat. */
export function flatColumns({ wanted }: Job, sounding: Sounding) {
  const { system } = sounding;
  const grid = logarithmicGrid(LOWEST_TONE, wanted.highest, BAND);
  const drive = flatDrive(wanted.level, sounding);
  const { displacementPeak, airSpeedPeak } = respond(system, grid, { driveVoltageRms: si('voltageRms', drive) });
  return { grid, drive, displacementPeak, airSpeedPeak };
}

/** A column behind a filter. */
export const filtered = (filter: Filter | undefined, grid: FrequencyGrid, column: Float64Array): Float64Array => {
  const passed = passedBy(filter, grid);
  return column.map((value, i) => value * passed[i]!);
};

/** What the wanted level asks at each tone of the band, and the loudest tone that all of them can have. */
function atWanted({ wanted }: Job, { system, limits }: Sounding) {
  const band = logarithmicGrid(safeFromOf(wanted), wanted.highest, BAND);
  const inBand = respond(system, band);
  const driveFor = inBand.levelHalfSpace.map((level) => 10 ** ((wanted.level - level) / 20));
  const asked = (column: Float64Array) => column.map((value, i) => value * driveFor[i]!);
  return { band, inBand, driveFor, asked, loudest: greatestLevel(system, limits, band).least };
}

/** How deep the response reaches behind the filter, and without it. */
function reaches({ wanted }: Job, filter: Filter | undefined, { system }: Sounding) {
  const range = [lowestReach(wanted), wanted.highest] as const;
  const level = referenceLevel(system) - wanted.fall;
  const alone = reachOf(system, undefined, range, level);
  const reach = filter ? reachOf(system, filter, range, level) : alone;
  return { reach, alone };
}

/** What boxes are compared by: a part of the account, which is found sooner. */
export interface Glance {
  readonly reach: number;
  readonly level: number;
  readonly airSpeed: number;
  /** The level up to which the vent is quiet by every published onset, dB; infinite without a vent. */
  readonly quiet: number;
}

/** Reach, level and air speed of a state; the reach is infinite where the response has fallen at the end of the band. */
export function glanceOf(job: Job, { filter }: State, sounding: Sounding): Glance {
  const { band, inBand, asked, loudest } = atWanted(job, sounding);
  return {
    reach: reaches(job, filter, sounding).reach ?? Infinity,
    level: loudest.levelHalfSpace,
    airSpeed: inBand.airSpeedPeak ? Math.max(...asked(inBand.airSpeedPeak)) : 0,
    quiet: inBand.airSpeedPeak
      ? ventNoiseOf(
          [{ openings: sounding.openings, airSpeedPeak: inBand.airSpeedPeak }],
          band,
          inBand.levelHalfSpace,
          job.air,
        ).quiet.level
      : Infinity,
  };
}

/** The place of the vent in which the air is fastest: its loss is the greatest. */
const fastest = (openings: Sounding['openings']): number =>
  openings.reduce((best, { share }, i) => (share > openings[best]!.share ? i : best), 0);

/** What a state does at the wanted level, and what it could do. */
export function accountOf(job: Job, { drivers, filter, vents }: State, sounding: Sounding): Account {
  const { system, limits, netVolume, fb, fc, Qtc, openings } = sounding;
  const { wanted } = job;
  const reference = referenceLevel(system);
  const { band, inBand, driveFor, asked, loudest } = atWanted(job, sounding);
  const { reach, alone } = reaches(job, filter, sounding);

  const flat = flatColumns(job, sounding);
  const { grid: whole, drive } = flat;
  const passed = passedBy(filter, whole);
  const most = greatestLevel(system, limits, whole);
  const headroom = most.driveVoltageRms.map((voltage, i) => -voltage / passed[i]!);
  const first = worst(whole, headroom);
  const at = whole.indexOf(first.frequency as never);

  const unfiltered = filter && alone;
  const safe = safeBehind(system, travelLimit(drivers), drive, filter, [2, Math.max(wanted.highest, 500)]);
  const load = loadOf(system, wanted.highest);
  const asks = worst(band, driveFor);

  const account: Account = {
    netVolume,
    ...(fb !== undefined && { fb }),
    ...(fc !== undefined && { fc }),
    ...(Qtc !== undefined && { Qtc }),
    ...(reach !== undefined && { reach, ...(isEndOfSearch(reach, wanted) && { endOfSearch: true as const }) }),
    ...(unfiltered !== undefined && {
      reachUnfiltered: unfiltered,
      ...(isEndOfSearch(unfiltered, wanted) && { unfilteredEndOfSearch: true as const }),
    }),
    loudest: { level: loudest.levelHalfSpace, frequency: loudest.frequency, binding: loudest.binding },
    programme: {
      level: reference + 20 * Math.log10(-first.value),
      frequency: first.frequency,
      binding: most.binding[at] as string,
    },
    wanted: {
      drive: asks,
      ...(load.nominal !== undefined && { power: asks.value ** 2 / load.nominal }),
      travel: worst(band, asked(inBand.displacementPeak)),
      ...(inBand.airSpeedPeak && { airSpeed: worst(band, asked(inBand.airSpeedPeak)) }),
    },
    ...(inBand.airSpeedPeak && {
      noise: ventNoiseOf([{ openings, airSpeedPeak: inBand.airSpeedPeak }], band, inBand.levelHalfSpace, job.air),
    }),
    flat: {
      drive,
      travel: worst(whole, filtered(filter, whole, flat.displacementPeak)),
      ...(flat.airSpeedPeak && { airSpeed: worst(whole, filtered(filter, whole, flat.airSpeedPeak)) }),
    },
    ...(safe.from !== undefined && { lowestSafe: safe.from }),
    leastLoad: load.least,
    ...(load.nominal !== undefined && { nominalLoad: load.nominal }),
  };
  if (inBand.airSpeedPeak === undefined) return account;
  // A quarter of all the work on a box that stands, and read of few of its hundreds of changes: it is worked out where it is read.
  let compression: CompressionTold | undefined;
  return Object.defineProperty(account, 'compression', {
    enumerable: true,
    get: () => {
      compression ??= compressionOf(system, [{ vent: vents[fastest(openings)]! }], band, driveFor);
      return compression;
    },
  });
}

/** What becomes of the tuning at the wanted level, where its sound falls behind most; left out without vents, or where these are unlike. */
export function tuningAtWanted(
  job: Job,
  { vents }: State,
  sounding: Sounding,
  { compression }: Account,
): TuningTold | undefined {
  if (compression === undefined || new Set(vents.map((vent) => JSON.stringify(vent))).size > 1) return undefined;
  const { band, driveFor } = atWanted(job, sounding);
  return tuningOf(sounding.system, vents[0]!, driveFor[band.indexOf(compression.frequency as never)]!);
}
