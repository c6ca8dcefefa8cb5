import type { System } from '@airspring/core/enclosure';
import { type Filter, filterLevel } from '@airspring/core/filter';
import { greatestLevel, lowestSafeFrequency, travelLimit } from '@airspring/core/limit';
import { bracketedRoot } from '@airspring/core/numeric';
import { type FrequencyGrid, frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { lowestLoad, referenceLevel, respond } from '@airspring/core/response';
import type { Job } from '../job/job.js';
import type { At } from '../record/answer.js';
import type { Sounding, State } from './state.js';

/** What a box does, as far as a person asks: how deep, how loud, what gives out, how fast the air is, what it asks of the amplifier. */
export interface Account {
  /** Air in the box, m³. */
  readonly netVolume: number;
  /** Tuning; of a closed box its resonance and its quality factor. */
  readonly fb?: number;
  readonly fc?: number;
  readonly Qtc?: number;
  /** From here up to the end of the band the response has fallen by at most the wanted fall, Hz. Left out where it has at the end. */
  readonly reach?: number;
  /** The loudest steady tone at every frequency of the band, dB, with the tone that is weakest and the limit that it reaches. */
  readonly loudest: { readonly level: number; readonly frequency: number; readonly binding: string };
  /** The loudest programme without an equaliser, by its level where the response is flat, judged for tones from 10 Hz up. */
  readonly programme: { readonly level: number; readonly frequency: number; readonly binding: string };
  /** At the wanted level, each at its worst tone of the band. */
  readonly wanted: { readonly drive: At; readonly travel: At; readonly airSpeed?: At };
  /** At the drive that gives the wanted level where the response is flat, each at its worst tone from 10 Hz up. */
  readonly flat: { readonly drive: number; readonly travel: At; readonly airSpeed?: At };
  /** Below this frequency that drive exceeds the travel; left out where it never does. */
  readonly lowestSafe?: number;
  readonly leastLoad: At;
}

const BAND = 160;
/** The lowest tone of a programme that is judged, Hz. */
const LOWEST_TONE = 10;

const passes = (filter: Filter | undefined, grid: FrequencyGrid): Float64Array =>
  filter ? filterLevel(filter, grid).map((level) => 10 ** (level / 20)) : new Float64Array(grid.length).fill(1);

const worst = (frequencies: ArrayLike<number>, values: ArrayLike<number>): At => {
  let at = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[at]!) at = i;
  return { frequency: frequencies[at]!, value: values[at]! };
};

/** The lowest frequency above which the level behind a filter holds to the end of the band; between samples by a root. */
function reachOf(system: System, filter: Filter | undefined, grid: FrequencyGrid, wanted: number): number | undefined {
  const spare = (at: FrequencyGrid): Float64Array => {
    const passed = filter && filterLevel(filter, at);
    return respond(system, at).levelHalfSpace.map((level, i) => level + (passed?.[i] ?? 0) - wanted);
  };
  const samples = spare(grid);
  let i = grid.length - 1;
  if (samples[i]! < 0) return undefined;
  while (i > 0 && samples[i - 1]! >= 0) i--;
  if (i === 0) return grid[0]!;
  const root = bracketedRoot((f) => spare(frequencyGrid([f]))[0]!, grid[i - 1]!, grid[i]!, 1e-10);
  return root.ok ? root.x : grid[i]!;
}

/** What one drive for all tones from 10 Hz up asks: the drive that gives the wanted level where the response is flat. */
export function flatColumns({ wanted }: Job, { system }: Sounding) {
  const grid = logarithmicGrid(LOWEST_TONE, wanted.highest, BAND);
  const drive = 10 ** ((wanted.level - referenceLevel(system)) / 20);
  const { displacementPeak, airSpeedPeak } = respond(system, grid, { driveVoltageRms: si('voltageRms', drive) });
  return { grid, drive, displacementPeak, airSpeedPeak };
}

/** A column behind a filter. */
export const filtered = (filter: Filter | undefined, grid: FrequencyGrid, column: Float64Array): Float64Array => {
  const passed = passes(filter, grid);
  return column.map((value, i) => value * passed[i]!);
};

/** What a state does at the wanted level, and what it could do. */
export function accountOf(job: Job, { drivers, filter }: State, sounding: Sounding): Account {
  const { system, limits, netVolume, fb, fc, Qtc } = sounding;
  const { wanted } = job;
  const reference = referenceLevel(system);
  const band = logarithmicGrid(wanted.lowest, wanted.highest, BAND);
  const loudest = greatestLevel(system, limits, band).least;

  const inBand = respond(system, band);
  const driveFor = inBand.levelHalfSpace.map((level) => 10 ** ((wanted.level - level) / 20));
  const asked = (column: Float64Array) => column.map((value, i) => value * driveFor[i]!);

  const flat = flatColumns(job, sounding);
  const { grid: whole, drive } = flat;
  const passed = passes(filter, whole);
  const most = greatestLevel(system, limits, whole);
  const headroom = most.driveVoltageRms.map((voltage, i) => -voltage / passed[i]!);
  const first = worst(whole, headroom);
  const at = whole.indexOf(first.frequency as never);

  const downward = logarithmicGrid(Math.min(5, wanted.lowest / 4), wanted.highest, 200);
  const reach = reachOf(system, filter, downward, reference - wanted.fall);
  const safe = lowestSafeFrequency(system, travelLimit(drivers), {
    driveVoltageRms: si('voltageRms', drive),
    from: si('frequency', 2),
    to: si('frequency', Math.max(wanted.highest, 500)),
  });
  const load = lowestLoad(system, { from: si('frequency', 10), to: si('frequency', 500) });

  return {
    netVolume,
    ...(fb !== undefined && { fb }),
    ...(fc !== undefined && { fc }),
    ...(Qtc !== undefined && { Qtc }),
    ...(reach !== undefined && { reach }),
    loudest: { level: loudest.levelHalfSpace, frequency: loudest.frequency, binding: loudest.binding },
    programme: {
      level: reference + 20 * Math.log10(-first.value),
      frequency: first.frequency,
      binding: most.binding[at] as string,
    },
    wanted: {
      drive: worst(band, driveFor),
      travel: worst(band, asked(inBand.displacementPeak)),
      ...(inBand.airSpeedPeak && { airSpeed: worst(band, asked(inBand.airSpeedPeak)) }),
    },
    flat: {
      drive,
      travel: worst(whole, filtered(filter, whole, flat.displacementPeak)),
      ...(flat.airSpeedPeak && { airSpeed: worst(whole, filtered(filter, whole, flat.airSpeedPeak)) }),
    },
    ...(safe.ok && !filter && { lowestSafe: safe.frequency as number }),
    leastLoad: { frequency: load.impedance.frequency, value: load.impedance.value },
  };
}
