import type { System } from '@airspring/core/enclosure';
import { type Filter, filterGroupDelay, filterLevel } from '@airspring/core/filter';
import { greatestLevel, type Limit, limitChanges } from '@airspring/core/limit';
import { type FrequencyGrid, logarithmicGrid, si, type VoltageRms } from '@airspring/core/quantity';
import { type Columns, type Features, features, HALF_POWER, respond } from '@airspring/core/response';
import { wantedAt } from '../job/heard.js';
import { type Job, safeFromOf } from '../job/job.js';
import { passedBy } from '../job/passed.js';
import { isEndOfSearch, lowestReach, reachAt, reachOf } from './behind-filter.js';
import { depthOf, type OwnLoad, readingsOf } from './depth.js';
import type { Curves, Stretch } from './design-parts.js';
import { greatestAt } from './greatest-wanted.js';
import { heardTold } from './heard-told.js';
import { impedanceTold } from './impedance-told.js';
import { GIVES_OUT, limitsOf } from './limits.js';
import { LOWEST_TONE, mechanicalOf } from './mechanical.js';
import { nonlinearTravelOf } from './nonlinear-travel.js';
import type { Played } from './played.js';
import type { Playing } from './playing.js';
import { guardOf } from './protection.js';
import { openingTold } from './vent-noise.js';
import { worst } from './worst.js';

const CURVE_POINTS = 240;

/** Stretches of a band, each with the one limit that binds there. */
function stretchesOf(
  system: System,
  limits: readonly Limit[],
  [from, to]: readonly [number, number],
  first: string,
): Stretch[] {
  const changes = limitChanges(system, limits, { from: si('frequency', from), to: si('frequency', to) });
  const ends: number[] = [...changes.map(({ frequency }) => frequency), to];
  return ends.map((end, i) => ({ from: ends[i - 1] ?? from, to: end, binding: changes[i - 1]?.above ?? first }));
}

const curvesOf = (columns: Columns, most: ReturnType<typeof greatestLevel>): Curves => ({
  driveVoltageRms: columns.driveVoltageRms,
  frequencies: [...columns.frequencies],
  levelHalfSpace: [...columns.levelHalfSpace],
  groupDelay: [...columns.groupDelay],
  displacementPeak: [...columns.displacementPeak],
  ...(columns.airSpeedPeak && { airSpeedPeak: [...columns.airSpeedPeak] }),
  impedance: [...columns.impedance],
  impedancePhase: [...columns.impedancePhase],
  greatestLevel: [...most.levelHalfSpace],
  binding: most.binding,
});

/** The columns behind a filter that stands before the amplifier. */
function behind(filter: Filter | undefined, columns: Columns): Columns {
  if (filter === undefined) return columns;
  const { frequencies, levelHalfSpace, groupDelay, displacementPeak, airSpeedPeak } = columns;
  const grid = frequencies as FrequencyGrid;
  const passed = passedBy(filter, grid);
  const lowered = filterLevel(filter, grid);
  const delayed = filterGroupDelay(filter, grid);
  const scaled = (column: Float64Array) => column.map((value, i) => value * passed[i]!);
  return {
    ...columns,
    levelHalfSpace: levelHalfSpace.map((level, i) => level + lowered[i]!),
    groupDelay: groupDelay.map((delay, i) => delay + delayed[i]!),
    displacementPeak: scaled(displacementPeak),
    ...(airSpeedPeak && { airSpeedPeak: scaled(airSpeedPeak) }),
  };
}

const FALLS = { f3: HALF_POWER, f6: 6, f10: 10 } as const;

/** Where the response behind a filter has fallen by half the power, by 6 dB and by 10 dB. */
function fallsBehind(
  system: System,
  filter: Filter,
  reference: number,
  band: readonly [number, number],
): Partial<Record<keyof typeof FALLS, number>> {
  const found = Object.entries(FALLS).flatMap(([name, fall]) => {
    const at = reachOf(system, filter, band, reference - fall);
    return at === undefined || at === band[0] ? [] : [[name, at] as const];
  });
  return Object.fromEntries(found);
}

/** How deep the response would go without the filter. */
function unfilteredOf({ wanted, heard }: Job, system: System, { f3, referenceLevel }: Features, from: number) {
  const band = [from, wanted.highest] as const;
  const fallen = referenceLevel - wanted.fall;
  const cutoff = heard?.wanted
    ? reachAt(heard, system, undefined, band, fallen + heard.inStep)
    : reachOf(system, undefined, band, fallen);
  const endOfSearch = cutoff !== undefined && isEndOfSearch(cutoff, wanted) && { endOfSearch: true as const };
  return { ...(f3 !== undefined && { f3 }), ...(cutoff !== undefined && { cutoff, ...endOfSearch }) };
}

/** What one drive does below the band behind a filter, at worst. */
function belowBand(system: System, filter: Filter, driveVoltageRms: VoltageRms, lowest: number) {
  const grid = logarithmicGrid(Math.min(LOWEST_TONE, lowest / 2), lowest, 200);
  const { displacementPeak, airSpeedPeak } = behind(filter, respond(system, grid, { driveVoltageRms }));
  return {
    displacementPeak: worst(grid, displacementPeak),
    ...(airSpeedPeak && { airSpeedPeak: worst(grid, airSpeedPeak) }),
  };
}

/** How a box plays. Its system is swept over the band and over the range of the curves. */
export function soundOf(
  job: Job,
  playing: Playing,
  givesOut: Readonly<Record<string, string>>,
): Pick<
  Played,
  | 'response'
  | 'loudness'
  | 'atWantedLevel'
  | 'opening'
  | 'mechanical'
  | 'nonlinearTravel'
  | 'protection'
  | 'impedance'
  | 'curves'
  | 'heard'
> {
  const { wanted } = job;
  const { system, drivers, own: loads, openings = [], reference = 'asymptote' } = playing;
  const limits = limitsOf(job, drivers, playing.limits);
  const { filter } = job.amplifier;
  const band = logarithmicGrid(safeFromOf(wanted), wanted.highest, 200);
  const place = wantedAt(job.heard);
  const loudest = greatestAt(place, system, limits, band);
  const perVolt = respond(system, band);
  const change = place.gain(band);
  const levelPerVolt = perVolt.levelHalfSpace.map((level, i) => level + change[i]!);
  const driveFor = levelPerVolt.map((level) => 10 ** ((wanted.level - level) / 20));
  const scaled = (column: Float64Array) => column.map((value, i) => value * driveFor[i]!);
  const currents = scaled(perVolt.currentRms);
  const heat = currents.map((current) => (current ** 2 * drivers.equivalent.Re) / drivers.count);

  const from = lowestReach(wanted);
  const found = features(system, { from: si('frequency', from), to: si('frequency', wanted.highest), reference });
  const falls = filter ? fallsBehind(system, filter, found.referenceLevel, [from, wanted.highest]) : found;
  const flatDrive = si('voltageRms', 10 ** ((wanted.level - found.referenceLevel - place.inStep) / 20));
  const keeps = { place, level: found.referenceLevel + place.inStep - wanted.fall };
  const grid = logarithmicGrid(Math.min(10, wanted.lowest / 2), Math.max(200, wanted.highest), CURVE_POINTS);
  const deep = depthOf(job, system, limits, playing.cutoff, loads);
  const own = loads[0] && ownLoad(system, loads[0], band, driveFor);
  const drive = worst(band, driveFor);
  const impedance = impedanceTold(system, wanted.highest);
  const { load } = impedance;
  const nonlinearTravel = nonlinearTravelOf(job, system, playing.largeSignal, openings);
  const mechanical = mechanicalOf(job, system, playing.largeSignal?.Xmech);
  const opening = openingTold(system, openings, band, levelPerVolt, driveFor);

  return {
    response: {
      ...(falls.f3 !== undefined && { f3: falls.f3 }),
      ...(falls.f6 !== undefined && { f6: falls.f6 }),
      ...(falls.f10 !== undefined && { f10: falls.f10 }),
      cutoff: playing.cutoff,
      ...(isEndOfSearch(playing.cutoff, wanted) && { cutoffEndOfSearch: true as const }),
      ...deep,
      ...(isEndOfSearch(deep.depth, wanted) && { endOfSearch: true as const }),
      reference,
      referenceLevel: found.referenceLevel,
      greatestRise: playing.rise,
      ...(filter && { unfiltered: unfilteredOf(job, system, found, from) }),
    },
    loudness: {
      ...loudest.least,
      stretches: stretchesOf(system, limits, [safeFromOf(wanted), wanted.highest], loudest.binding[0]!),
      givesOut: { ...GIVES_OUT, ...givesOut },
    },
    atWantedLevel: {
      driveVoltageRms: drive,
      currentRms: worst(band, currents),
      displacementPeak: worst(band, scaled(perVolt.displacementPeak)),
      heat: worst(band, heat),
      ...(load.nominal !== undefined && { power: { ...drive, value: drive.value ** 2 / load.nominal } }),
      ...(perVolt.airSpeedPeak && { airSpeedPeak: worst(band, scaled(perVolt.airSpeedPeak)) }),
      ...(own && { own }),
    },
    ...(opening && { opening: { ...opening, wanted: wanted.level } }),
    ...(mechanical && { mechanical }),
    ...(nonlinearTravel && { nonlinearTravel }),
    protection: {
      ...guardOf(job, playing, flatDrive, keeps),
      atFullVoltage: guardOf(job, playing, si('voltageRms', job.amplifier.voltage), keeps),
      ...(filter && { below: belowBand(system, filter, flatDrive, safeFromOf(wanted)) }),
    },
    impedance,
    ...(job.heard && {
      heard: heardTold(job, job.heard, system, limits, { from, reference: found.referenceLevel, curves: grid }),
    }),
    curves: curvesOf(
      behind(filter, respond(system, grid, { driveVoltageRms: flatDrive })),
      greatestLevel(system, limits, grid),
    ),
  };
}

/** The greatest load, at the wanted level, of the part that the kind limits. */
function ownLoad(system: System, { load, point }: OwnLoad, band: Float64Array, driveFor: Float64Array) {
  const readings = readingsOf(system, load, band);
  const perReading = load.perReading(point);
  const values = readings.map((reading, i) => reading * perReading * driveFor[i]!);
  return { what: load.what, meaning: load.meaning, at: worst(band, values), limit: load.capacity(point) * perReading };
}
