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
import { atFrequency } from '../response/at-frequency.js';
import { turns } from '../response/extremum.js';
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
  const { columnsAt, most, peaks } = limited(system, limits);
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
  const slack = (f: number) => most(Float64Array.of(f)).voltage[0]! - driveVoltageRms;
  // A peak between two samples that are safe may be too much.
  const peak = Math.max(...peaks(grid, swept, low).filter((f) => slack(f) < 0));
  if (safe === 0 && peak < from) {
    return impossible('safe-throughout', `${drive} is safe down to ${hertz(from)}, the beginning of the band`);
  }
  const below = Math.max(peak, grid[low]!);
  const above = grid.find((f) => f > below) as number;
  const root = bracketedRoot(slack, below, above, 1e-9);
  const bound = name(0, most(Float64Array.of(below)).binding);
  return { ok: true, frequency: si('frequency', root.ok ? root.x : above), binding: bound };
}

/** What limits ask of a system: the greatest drive at some frequencies with the limit that binds, and where each is nearest between them. */
function limited(system: System, limits: readonly Limit[]) {
  const network = compiledSystem(system);
  const places = limits.map(({ probe }) => {
    const at = probe === undefined ? -1 : network.probes.indexOf(probe);
    if (probe !== undefined && at < 0) throw missingProbe(probe);
    return at;
  });
  const columnsAt = (frequencies: Float64Array) => {
    const columns = network.probes.map(() => complexColumn(frequencies.length));
    const stopped = network.sweep(frequencies, columns);
    if (stopped >= 0) throw undamped(frequencies[stopped]!);
    return places.map((place) => columns[place]);
  };
  type Swept = ReturnType<typeof columnsAt>;
  const most = (frequencies: Float64Array, columns: Swept = columnsAt(frequencies)) => {
    const voltage = new Float64Array(frequencies.length);
    const binding = new Int32Array(frequencies.length);
    greatestDrive(frequencies, limits, columns, voltage, binding);
    return { voltage, binding };
  };
  /** From one place of a grid on. */
  const peaks = (grid: Float64Array, columns: Swept, start: number): number[] => {
    const { slope } = atFrequency(network);
    const frequencies = grid.subarray(start);
    return columns.flatMap((column, k) => {
      if (column === undefined) return [];
      const power = (limits[k] as Limit).integrated ? 1 : 0;
      const sizes = frequencies.map((f, i) => Math.hypot(column.re[start + i]!, column.im[start + i]!) / f ** power);
      return turns(frequencies, sizes, 1, (f) => slope(places[k]!, f) - power);
    });
  };
  return { columnsAt, most, peaks };
}
