import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { missingProbe, undamped } from '../network/index.js';
import { bracketedRoot, complexColumn } from '../numeric/index.js';
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
import { compiledSystem } from '../response/index.js';
import { greatestDrive, refuseBadLimits } from './greatest-level.js';
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
  const most = greatestDriveOf(system, limits);
  const grid = logarithmicGrid(from, to, POINTS);
  const { voltage, binding } = most(grid);
  const name = (i: number) => (limits[binding[i] as number] as Limit).name;
  const isTooMuch = (i: number) => (voltage[i] as number) < driveVoltageRms;
  const last = POINTS - 1;
  if (isTooMuch(last))
    return impossible('above-at-end', `${drive} is too much even at ${hertz(to)}, the end of the band: ${name(last)}`);
  for (let i = last; i > 0; i--) {
    if (!isTooMuch(i - 1)) continue;
    const below = name(i - 1);
    const slack = (f: number) => (most(Float64Array.of(f)).voltage[0] as number) - driveVoltageRms;
    const root = bracketedRoot(slack, grid[i - 1] as number, grid[i] as number, 1e-9);
    return { ok: true, frequency: si('frequency', root.ok ? root.x : (grid[i] as number)), binding: below };
  }
  return impossible('safe-throughout', `${drive} is safe down to ${hertz(from)}, the beginning of the band`);
}

/** The greatest drive at each of some frequencies, and the place of the limit that binds. */
function greatestDriveOf(system: System, limits: readonly Limit[]) {
  const network = compiledSystem(system);
  const places = limits.map(({ probe }) => {
    const at = probe === undefined ? -1 : network.probes.indexOf(probe);
    if (probe !== undefined && at < 0) throw missingProbe(probe);
    return at;
  });
  return (frequencies: Float64Array) => {
    const columns = network.probes.map(() => complexColumn(frequencies.length));
    const stopped = network.sweep(frequencies, columns);
    if (stopped >= 0) throw undamped(frequencies[stopped] as number);
    const voltage = new Float64Array(frequencies.length);
    const binding = new Int32Array(frequencies.length);
    const limited = places.map((place) => columns[place]);
    greatestDrive(frequencies, limits, limited, voltage, binding);
    return { voltage, binding };
  };
}
