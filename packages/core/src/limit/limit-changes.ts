import type { System } from '../enclosure/index.js';
import { bracketedRoot } from '../numeric/index.js';
import {
  type Frequency,
  type FrequencyInput,
  logarithmicGrid,
  optional,
  positive,
  readFields,
  si,
  type VoltageRms,
} from '../quantity/index.js';
import { type AllowedDrive, allowedDrive } from './allowed-drive.js';
import { refuseBadLimits } from './greatest-level.js';
import type { Limit } from './limit.js';

const POINTS = 600;
/**
 * The binding limit changes only to one that allows less by more than this, so that rounding does not alternate between two equal
 * limits.
 */
const TIED = 1e-9;

/** A frequency at which another limit begins to bind. */
export interface LimitChange {
  readonly frequency: Frequency;
  /** Name of the limit that binds just below. */
  readonly below: string;
  /** Name of the limit that binds just above. */
  readonly above: string;
  /** The drive that both allow there. */
  readonly driveVoltageRms: VoltageRms;
}

/**
 * The frequencies at which the limit that binds changes, along the greatest level that a system can play. At each of them two
 * limits allow the same drive; the frequency is a root, not a point of a grid.
 *
 * $$ \frac{g_a}{|h_a(f)|} = \frac{g_b}{|h_b(f)|} = \min_k \frac{g_k}{|h_k(f)|} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $g_k$ | `greatestRms` | SI | greatest value that limit k allows |
 * | $h_k$ | `probe` | SI per V | value that one volt causes |
 *
 * @validity as {@link greatestLevel}; 600 points from `from` (default 2 Hz) to `to` (default 200 Hz), and the peak of each probe
 * between them. A limit that binds only between two of these points is missed, and so is one that binds by less than a relative 10⁻⁹.
 * @neglects what {@link greatestLevel} neglects
 * @returns the changes, in the order of frequency; none where one limit binds throughout
 * @throws InputError `empty` without limits
 * @source small1973vented2 displacement-limited and thermally limited power
 * @example limitChanges(system, [...travelLimit(driver), voltageLimit('20 V')])[0] // { below: 'travel', above: 'amplifier voltage', … }
 */
export function limitChanges(
  system: System,
  limits: readonly Limit[],
  options: { readonly from?: FrequencyInput; readonly to?: FrequencyInput } = {},
): readonly LimitChange[] {
  const { from = 2, to = 200 } = readFields('band', options, {
    from: optional(positive('frequency')),
    to: optional(positive('frequency')),
  });
  refuseBadLimits(limits);
  const allowed = allowedDrive(system, limits);
  const grid = logarithmicGrid(from, to, POINTS);
  const places = Float64Array.from(new Set([...grid, ...allowed.peaks(grid, allowed.columnsAt(grid), 0)])).sort();
  const columns = allowed.each(places);
  const changes: LimitChange[] = [];
  let binding = least(columns, 0);
  places.forEach((frequency, i) => {
    const next = least(columns, i, binding);
    if (next === binding) return;
    for (const { root, a, b } of crossings(allowed, binding, next, places[i - 1]!, frequency)) {
      const driveVoltageRms = si('voltageRms', allowed.most(Float64Array.of(root)).voltage[0]!);
      const [below, above] = [limits[a] as Limit, limits[b] as Limit];
      changes.push({ frequency: si('frequency', root), below: below.name, above: above.name, driveVoltageRms });
    }
    binding = next;
  });
  return changes;
}

/**
 * Place of the limit that allows least. It is the one that bound before, as long as no other allows clearly less, and otherwise
 * the first of those that are equal.
 */
function least(columns: readonly Float64Array[], i: number, before = 0): number {
  const allows = columns.map((column) => column[i]!);
  const fewest = Math.min(...allows);
  const isLeast = (volts: number) => volts <= fewest * (1 + TIED);
  return isLeast(allows[before]!) ? before : allows.findIndex(isLeast);
}

/** The changes from limit a, which binds at `low`, to b, which binds at `high`; a third may bind on the way. */
function crossings(
  allowed: AllowedDrive,
  a: number,
  b: number,
  low: number,
  high: number,
): readonly { readonly root: number; readonly a: number; readonly b: number }[] {
  const apart = (f: number) => {
    const each = allowed.each(Float64Array.of(f));
    return Math.log(each[b]![0]! / each[a]![0]!);
  };
  const found = bracketedRoot(apart, low, high);
  // If the sign does not change, the two are equal at `low` except for rounding.
  const root = found.ok ? found.x : low;
  const between = least(allowed.each(Float64Array.of(root)), 0, a);
  if (between === a || between === b || root === low || root === high) return [{ root, a, b }];
  return [...crossings(allowed, a, between, low, root), ...crossings(allowed, between, b, root, high)];
}
