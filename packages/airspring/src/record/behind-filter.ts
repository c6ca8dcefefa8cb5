import type { System } from '@airspring/core/enclosure';
import type { Filter } from '@airspring/core/filter';
import { greatestLevel, type Limit, lowestSafeFrequency } from '@airspring/core/limit';
import { bracketedRoot } from '@airspring/core/numeric';
import { type FrequencyGrid, frequencyGrid, logarithmicGrid, si } from '@airspring/core/quantity';
import { cutoff, respond } from '@airspring/core/response';
import type { Heard } from '../job/heard.js';
import type { Job } from '../job/job.js';
import { passedBy } from '../job/passed.js';
import { searchGrid } from '../search/frequencies.js';

const POINTS = 600;

/**
 * The lowest frequency above which the level behind a filter stays at or above a wanted one, up to the end of a band; the
 * beginning of the band where it always does, `undefined` where it has fallen at the end.
 */
export function reachOf(
  system: System,
  filter: Filter | undefined,
  [from, to]: readonly [number, number],
  wanted: number,
): number | undefined {
  const found = cutoff(system, {
    reference: { level: si('level', wanted) },
    drop: 0,
    from: si('frequency', from),
    to: si('frequency', to),
    ...(filter && { filter }),
  });
  if (found.ok) return found.frequency;
  return found.because.some(({ code }) => code === 'above-throughout') ? from : undefined;
}

/** The lowest frequency above which a value stays at or above zero to the end of a grid; between samples by a root. */
function lowestFrom(spare: (at: FrequencyGrid) => Float64Array, grid: FrequencyGrid): number | undefined {
  const samples = spare(grid);
  let i = grid.length - 1;
  if (samples[i]! < 0) return undefined;
  while (i > 0 && samples[i - 1]! >= 0) i--;
  if (i === 0) return grid[0]!;
  const root = bracketedRoot((f) => spare(frequencyGrid([f]))[0]!, grid[i - 1]!, grid[i]!, 1e-10);
  return root.ok ? root.x : grid[i]!;
}

/** The same for the level at the listener: what the way there changes is no filter. */
export function reachAt(
  { gain }: Pick<Heard, 'gain'>,
  system: System,
  filter: Filter | undefined,
  [from, to]: readonly [number, number],
  wanted: number,
): number | undefined {
  const grid = logarithmicGrid(si('frequency', from), si('frequency', to), POINTS);
  return lowestFrom((at) => {
    const passed = passedBy(filter, at);
    const change = gain(at);
    return respond(system, at).levelHalfSpace.map(
      (level, i) => level + change[i]! + 20 * Math.log10(passed[i]!) - wanted,
    );
  }, grid);
}

/** From where upwards a drive is safe, Hz: at the first of the grid everywhere; `undefined` where it never is. */
export interface Safe {
  readonly from?: number;
  readonly everywhere?: true;
}

/** From where upwards a constant drive before a filter keeps the system behind it within every limit. */
export function safeBehind(
  system: System,
  limits: readonly Limit[],
  drive: number,
  filter: Filter | undefined,
  [from, to]: readonly [number, number],
): Safe {
  if (limits.length === 0) return { everywhere: true };
  if (filter === undefined) {
    const options = { driveVoltageRms: si('voltageRms', drive), from: si('frequency', from), to: si('frequency', to) };
    const found = lowestSafeFrequency(system, limits, options);
    if (found.ok) return { from: found.frequency };
    return found.because.some(({ code }) => code === 'above-at-end') ? {} : { everywhere: true };
  }
  const grid = logarithmicGrid(from, to, POINTS);
  const lowest = lowestFrom((at) => {
    const passed = passedBy(filter, at);
    return greatestLevel(system, limits, at).driveVoltageRms.map((most, i) => most / passed[i]! - drive);
  }, grid);
  if (lowest === undefined) return {};
  return lowest === grid[0] ? { everywhere: true } : { from: lowest };
}

/** Down to where it is asked how deep a box reaches, Hz. */
export const lowestReach = ({ lowest }: Job['wanted']): number => Math.min(5, lowest / 4);

/** Whether a reach is no finding, but the lowest frequency that was looked at: for boxes that stand, or by a search for boxes. */
export const isEndOfSearch = (reach: number, wanted: Job['wanted']): boolean =>
  [lowestReach(wanted), searchGrid(wanted)[0]!].some((end) => Math.abs(reach / end - 1) < 1e-9);
