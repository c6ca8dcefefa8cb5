import type { System } from '../enclosure/index.js';
import { type Impossible, impossible, type Reason } from '../fault/index.js';
import {
  besselShape,
  butterworthShape,
  type Filter,
  type FilterShape,
  filterGroupDelay,
  filterLevel,
  highPass,
  linkwitzRileyShape,
} from '../filter/index.js';
import { type Frequency, format, frequencyGrid, si } from '../quantity/index.js';
import { cutoffsBehind } from '../response/cutoff.js';
import { refuseBadLimits } from './greatest-level.js';
import type { Limit } from './limit.js';
import { type ProtectionInput, readProtection } from './protection-input.js';
import { touchingCorner } from './touching-corner.js';

/** A high-pass with which every limit is just kept, and what it costs. */
export interface ProtectiveFilter {
  readonly shape: FilterShape;
  readonly corner: Frequency;
  readonly filter: Filter;
  /** The limit that is reached, and where. */
  readonly binding: string;
  readonly bindingAt: Frequency;
  /** Half-power frequency of the box behind the filter. */
  readonly f3: Frequency;
  readonly cost: {
    /** By how much f3 rises, Hz. A filter that lifts what lies near its corner may lower it. */
    readonly depth: number;
    /** Group delay that the filter adds at `at`, s. */
    readonly delay: number;
    /** Level that the filter takes at `at`, dB. */
    readonly level: number;
  };
}

/** The filters that protect a system, the gentlest first. */
export interface ProtectiveFilters {
  readonly ok: true;
  readonly driveVoltageRms: number;
  /** Half-power frequency without a filter. */
  readonly f3: Frequency;
  /** The frequency at which delay and level are given. */
  readonly at: Frequency;
  readonly candidates: readonly [ProtectiveFilter, ...ProtectiveFilter[]];
  /** Shapes with which no corner in the band keeps the limits, or leaves a half-power frequency in it. */
  readonly unsuited: readonly { readonly shape: FilterShape; readonly because: readonly Reason[] }[];
}

const usualShapes = (): readonly FilterShape[] => [
  ...[1, 2, 3, 4].map(butterworthShape),
  ...[2, 3, 4].map(besselShape),
  ...[2, 4].map(linkwitzRileyShape),
];

/** Depth is compared in tenths of a hertz, so that filters that reach equally deep are told apart by their delay. */
const TENTH = 10;
const gentler = (a: ProtectiveFilter, b: ProtectiveFilter): number =>
  Math.round(TENTH * a.cost.depth) - Math.round(TENTH * b.cost.depth) || a.cost.delay - b.cost.delay;

/**
 * The gentlest high-pass that keeps every limit at a drive: for each shape the lowest corner at which all limits just hold throughout a
 * band, and what it costs. The one that costs the least depth comes first; of those that cost the same to a tenth of a hertz, the one
 * that delays least. For a vented box and its travel this is the filter against what lies below its tuning.
 *
 * $$ f_c = \min c \ \text{with}\ \max_f \left|H\!\left(\tfrac{f}{c}\right)\right| \frac{e}{e_{max}(f)} \le 1, \quad
 *    e_{max}(f) = \min_k \frac{g_k}{|h_k(f)|} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $e$ | `driveVoltageRms` | V | drive before the filter |
 * | $H$ | `candidates` | 1 | high-pass of a shape |
 * | $g_k$, $h_k$ | `limits` | SI | what limit k allows, and what one volt causes |
 * | $f_c$ | `corner` | Hz | corner |
 *
 * @validity as {@link greatestLevel}; a drive that passes a limit by less than a millionth counts as safe. Of a shape that lifts, corners
 * that are safe only within 3 % are missed
 * @neglects what {@link greatestLevel} neglects
 * @returns each filter with its cost, the gentlest first, or `safe-throughout`, `above-at-end`, `no-filter-holds`, or why there is no f3
 * @throws InputError `empty`, `conflict`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`, `inconsistent`, `unknown-field`
 * @source small1973vented1 displacement function, below the tuning too
 * @source small1972closed1 displacement function
 * @example gentlestHighPass(box, travelLimit(driver), { driveVoltageRms: '20 V' }) // candidates[0].filter.name: 'High-pass of order 2 at 21.8 Hz, Butterworth'
 */
export function gentlestHighPass(
  system: System,
  limits: readonly Limit[],
  input: ProtectionInput,
): ProtectiveFilters | Impossible {
  const asked = readProtection(system, input);
  refuseBadLimits(limits);
  const { driveVoltageRms, from, to, candidates = usualShapes() } = asked;
  const find = touchingCorner(system, limits, driveVoltageRms, [from, to]);
  if (typeof find !== 'function') return find;
  const cutoffBehind = cutoffsBehind(system, { from, to, reference: asked.reference });
  const bare = cutoffBehind();
  if (!bare.ok) return bare;
  const { at = bare.frequency } = asked;
  const there = frequencyGrid([at]);
  const found: ProtectiveFilter[] = [];
  const unsuited: { shape: FilterShape; because: readonly Reason[] }[] = [];
  for (const shape of candidates) {
    const touched = find(shape);
    const filter = touched.ok ? highPass(shape, touched.corner) : undefined;
    const behind = filter ? cutoffBehind(filter) : (touched as Impossible);
    if (!touched.ok || !filter || !behind.ok) {
      unsuited.push({ shape, because: (behind as Impossible).because });
      continue;
    }
    const cost = {
      depth: behind.frequency - bare.frequency,
      delay: filterGroupDelay(filter, there)[0]!,
      level: -filterLevel(filter, there)[0]!,
    };
    found.push({ shape, filter, ...touched, f3: behind.frequency, cost });
  }
  const [first, ...others] = found.sort(gentler);
  if (first === undefined) {
    const end = format('frequency', to, 'Hz', 4);
    return impossible('no-filter-holds', `none of the filters keeps every limit with a corner below ${end}`);
  }
  return {
    ok: true,
    driveVoltageRms,
    f3: bare.frequency,
    at: si('frequency', at),
    candidates: [first, ...others],
    unsuited,
  };
}
