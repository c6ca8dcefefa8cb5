import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import type { Filter } from '../filter/index.js';
import { bracketedRoot, type ComplexColumn } from '../numeric/index.js';
import {
  anySign,
  decimalText,
  type Field,
  type Frequency,
  type FrequencyInput,
  logarithmicGrid,
  optional,
  readFields,
  si,
} from '../quantity/index.js';
import { compiledSystem, sweptColumns } from './compile.js';
import { levelOf } from './level.js';
import { levelBehindFilter } from './level-behind-filter.js';
import { type Reference, referenceIn, referenceShape } from './reference.js';
import { type SampledLevel, sampledLevel } from './sampled-level.js';

/** Half power in dB: 10 log10 2. */
export const HALF_POWER = 10 * Math.log10(2);

export interface CutoffOptions {
  /** How far below the reference, dB; default half power, 3.0103 dB. */
  readonly drop?: number;
  /** Default: the asymptote, {@link referenceLevel}. */
  readonly reference?: Reference;
  /** Band in which the level must stay high enough; default 2 Hz to 200 Hz. */
  readonly from?: FrequencyInput;
  readonly to?: FrequencyInput;
  /** A filter in front of the amplifier. The asymptote is that of a filter that passes everything far above its corner. */
  readonly filter?: Filter;
}

const filterField: Field<Filter> = {
  optional: false,
  read: (faults, got, path) => {
    if (typeof got === 'object' && got !== null) return got as Filter;
    const expected = 'a filter, such as highPass makes';
    faults.push({ code: 'inconsistent', path, got, expected, remedy: 'Leave it out if there is none.' });
    return undefined;
  },
};
const bandShape = { drop: optional(anySign('level')), ...referenceShape, filter: optional(filterField) };

const [LOWEST, HIGHEST] = [si('frequency', 2), si('frequency', 200)];

/** The options, read. */
interface ReadOptions {
  readonly drop?: number | undefined;
  readonly reference?: Reference | undefined;
  readonly from?: Frequency | undefined;
  readonly to?: Frequency | undefined;
  readonly filter?: Filter | undefined;
}

const POINTS = 400;

/** A sampled level, and the level to cross. */
export interface Crossed extends SampledLevel {
  readonly wanted: number;
}

/** The level of a system in the band of the options, and the level to cross in it. `usual` is the reference if none is given. */
export function levelToCross(
  system: System,
  options: CutoffOptions,
  [path, usual]: readonly [path: string, usual: Reference] = ['cutoff', 'asymptote'],
  points = POINTS,
): Crossed {
  const read = readFields(path, options, bandShape);
  return levelsToCross(system, { ...read, reference: read.reference ?? usual }, points)(read.filter);
}

/** The same behind any filter, from one sweep. */
function levelsToCross(
  system: System,
  { drop = HALF_POWER, reference = 'asymptote', from = LOWEST, to = HIGHEST }: Omit<ReadOptions, 'filter'>,
  points = POINTS,
): (filter: Filter | undefined) => Crossed {
  const bare = levelOf(system);
  const grid = logarithmicGrid(from, to, points);
  let columns: readonly ComplexColumn[] | undefined;
  return (filter) => {
    const level = filter === undefined ? bare : levelBehindFilter(bare, filter);
    const top = referenceIn(system, reference, level);
    columns ??= sweptColumns(compiledSystem(system), grid);
    const sampled = sampledLevel(level, grid, columns);
    return { ...sampled, wanted: top(sampled) - drop };
  };
}

/** Refines a crossing between two neighbours of the grid. */
export function crossing({ level, wanted }: Crossed, below: number, above: number): Frequency {
  const root = bracketedRoot((f) => level.at(f) - wanted, below, above, 1e-12 * above);
  return si('frequency', root.ok ? root.x : above);
}

/**
 * All frequencies in a band at which the level crosses the reference minus a drop, in rising order.
 *
 * @validity responses without features narrower than the spacing of the 400 points of the band; tops and dips between points
 * are found
 * @neglects what `respond` neglects
 * @returns Hz
 * @throws InputError
 * @source small1972direct
 * @example levelCrossings(system, { drop: 6 })
 */
export const levelCrossings = (system: System, options: CutoffOptions = {}): readonly Frequency[] =>
  crossingsOf(levelToCross(system, options));

/** The same for a response that has already been sampled. */
export function crossingsOf(crossed: Crossed): readonly Frequency[] {
  const { grid, levels, wanted } = crossed;
  return Array.from(grid, (_, i) => i).flatMap((i) => {
    if (i === 0) return [];
    const before = levels[i - 1]! >= wanted;
    return before === levels[i]! >= wanted ? [] : [crossing(crossed, grid[i - 1]!, grid[i]!)];
  });
}

/** A cut-off, or why there is none in the band. */
export type Cutoff = { readonly ok: true; readonly frequency: Frequency } | Impossible;

/**
 * The lowest frequency from which the level stays at or above the reference minus a drop, up to the end of the band. This is
 * f3 (half power) by default, and f6 or f10 with another `drop`.
 *
 * @validity responses without features narrower than the spacing of the 400 points of the band; tops and dips between points
 * are found
 * @throws InputError
 * @source small1972direct
 * @example cutoff(system) // { ok: true, frequency: 31.2 }
 */
export const cutoff = (system: System, options: CutoffOptions = {}): Cutoff =>
  lowestAbove(levelToCross(system, options));

/** The half-power cut-offs of a system behind any filter and without one. It is swept once. */
export function cutoffsBehind(
  system: System,
  band: Pick<ReadOptions, 'from' | 'to' | 'reference'>,
): (filter?: Filter) => Cutoff {
  const crossedBehind = levelsToCross(system, band);
  return (filter) => lowestAbove(crossedBehind(filter));
}

/** The same with another number of points. */
export const cutoffAmong = (system: System, options: CutoffOptions, points: number): Cutoff =>
  lowestAbove(levelToCross(system, options, undefined, points));

/** The same for a response that has already been sampled. */
export function lowestAbove(crossed: Crossed): Cutoff {
  const { grid, levels, wanted } = crossed;
  const last = grid.length - 1;
  if (levels[last]! < wanted) {
    const text = `at ${decimalText(grid[last]!, 4)} Hz, the end of the band, the level is already ${(wanted - levels[last]!).toFixed(2)} dB too low`;
    return impossible('below-at-end', text);
  }
  for (let i = last; i > 0; i--) {
    if (levels[i - 1]! < wanted) {
      return { ok: true, frequency: crossing(crossed, grid[i - 1]!, grid[i]!) };
    }
  }
  return impossible(
    'above-throughout',
    `the level is high enough down to ${decimalText(grid[0]!, 4)} Hz, the beginning of the band`,
  );
}
