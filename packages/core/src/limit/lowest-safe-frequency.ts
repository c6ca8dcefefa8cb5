import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { bracketedRoot } from '../numeric/index.js';
import {
  type Frequency,
  type FrequencyInput,
  format,
  logarithmicGrid,
  optional,
  positive,
  readFields,
  si,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { allowedDrive } from './allowed-drive.js';
import { refuseBadLimits } from './greatest-level.js';
import type { Limit } from './limit.js';

const POINTS = 600;

/** The frequency below which a drive is too much, or why there is none. */
export type LowestSafeFrequency =
  | { readonly ok: true; readonly frequency: Frequency; readonly binding: string }
  | Impossible;

/**
 * The lowest frequency from which a constant drive stays within every limit, up to `to`. Below it the drive must be reduced,
 * by a high-pass filter or by choosing what is played.
 *
 * @validity as {@link greatestLevel}; 600 points from `from` (default 2 Hz) to `to` (default 200 Hz)
 * @throws InputError
 * @neglects what {@link greatestLevel} neglects
 * @returns Hz and what binds, or `above-at-end` or `safe-throughout`
 * @source small1972closed1 displacement function
 * @example lowestSafeFrequency(system, travelLimit(driver), { driveVoltageRms: '15 V' })
 */
export function lowestSafeFrequency(
  system: System,
  limits: readonly Limit[],
  options: { readonly driveVoltageRms: VoltageRmsInput; readonly from?: FrequencyInput; readonly to?: FrequencyInput },
): LowestSafeFrequency {
  const {
    driveVoltageRms,
    from = 2,
    to = 200,
  } = readFields('drive', options, {
    driveVoltageRms: positive('voltageRms'),
    from: optional(positive('frequency')),
    to: optional(positive('frequency')),
  });
  refuseBadLimits(limits);
  const drive = format('voltageRms', driveVoltageRms, 'V', 4);
  const hertz = (f: number) => format('frequency', f, 'Hz', 4);
  const { columnsAt, most, mostAt, peaks } = allowedDrive(system, limits);
  const grid = logarithmicGrid(from, to, POINTS);
  const swept = columnsAt(grid);
  const { voltage, binding } = most(grid, swept);
  const name = (i: number, of = binding) => (limits[of[i]!] as Limit).name;
  const isTooMuch = (i: number) => voltage[i]! < driveVoltageRms;
  const last = POINTS - 1;
  if (isTooMuch(last))
    return impossible('above-at-end', `${drive} is too much even at ${hertz(to)}, the end of the band: ${name(last)}`);
  let safe = last;
  while (safe > 0 && !isTooMuch(safe - 1)) safe--;
  const low = Math.max(safe - 1, 0);
  const slack = (f: number) => mostAt(f) - driveVoltageRms;
  // A peak between two samples that are safe may be too much.
  const peak = Math.max(...peaks(grid, swept, low).filter((f) => slack(f) < 0));
  if (safe === 0 && peak < from) {
    return impossible('safe-throughout', `${drive} is safe down to ${hertz(from)}, the beginning of the band`);
  }
  const below = Math.max(peak, grid[low]!);
  const above = grid.find((f) => f > below)!;
  const root = bracketedRoot(slack, below, above, 1e-9);
  const bound = name(0, most(Float64Array.of(below)).binding);
  return { ok: true, frequency: si('frequency', root.ok ? root.x : above), binding: bound };
}
