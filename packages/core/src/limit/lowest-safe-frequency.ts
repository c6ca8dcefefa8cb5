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
import { type GreatestLevel, greatestLevel } from './greatest-level.js';
import type { Limit } from './limit.js';

/** Where a drive becomes too much, or that it never does. */
export type LowestSafeFrequency =
  | { readonly ok: true; readonly frequency: Frequency; readonly binding: string }
  | Impossible;

/**
 * The lowest frequency above which a constant drive stays within every limit, up to `to`. Below it the drive must be
 * taken away: by a high-pass, or by care.
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
  const grid = logarithmicGrid(from, to, 600);
  const most: GreatestLevel = greatestLevel(system, limits, grid);
  const excess = (i: number) => (most.driveVoltageRms[i] as number) < driveVoltageRms;
  const last = grid.length - 1;
  const drive = format('voltageRms', driveVoltageRms, 'V', 4);
  const hertz = (f: number) => format('frequency', f, 'Hz', 4);
  if (excess(last)) {
    return impossible('above-at-end', `${drive} is too much at ${hertz(to)} already: ${most.binding[last]}`);
  }
  for (let i = last; i > 0; i--) {
    if (!excess(i - 1)) continue;
    const slack = (f: number) => (greatestLevel(system, limits, [f]).driveVoltageRms[0] as number) - driveVoltageRms;
    const root = bracketedRoot(slack, grid[i - 1] as number, grid[i] as number, 1e-9);
    const frequency = si('frequency', root.ok ? root.x : (grid[i] as number));
    return { ok: true, frequency, binding: most.binding[i - 1] as string };
  }
  return impossible('safe-throughout', `${drive} is safe down to ${hertz(from)}, where the band begins`);
}
