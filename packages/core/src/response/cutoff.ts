import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import type { Filter } from '../filter/index.js';
import { compileFilterLevel } from '../filter/level.js';
import { bracketedRoot, type ComplexColumn } from '../numeric/index.js';
import {
  anySign,
  decimalText,
  type Field,
  type Frequency,
  type FrequencyGrid,
  type FrequencyInput,
  type LevelInput,
  logarithmicGrid,
  optional,
  positive,
  readFields,
  si,
} from '../quantity/index.js';
import { compiledSystem, sweptColumns } from './compile.js';
import { turns } from './extremum.js';
import { type LevelOf, levelOf, referenceLevel } from './level.js';

/** Half power in dB: 10 log10 2. */
export const HALF_POWER = 10 * Math.log10(2);

/** The level that a cut-off is counted from. */
export type Reference =
  | 'asymptote'
  | 'maximum'
  | { readonly level: LevelInput }
  | { readonly frequency: FrequencyInput };

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

/** The readers of a band and of the reference in it. */
export const referenceShape = {
  reference: optional<Reference>({
    optional: false,
    read: (faults, got, path) => {
      if (got === 'asymptote' || got === 'maximum' || (typeof got === 'object' && got !== null))
        return got as Reference;
      const expected = "'asymptote', 'maximum', a record with level, or one with frequency";
      faults.push({ code: 'unknown-field', path, got, expected, remedy: 'Choose one of them.' });
      return undefined;
    },
  }),
  from: optional(positive('frequency')),
  to: optional(positive('frequency')),
};

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

/** Samples of a level over frequency, with the tops and dips between them. */
export interface SampledLevel {
  readonly level: LevelOf;
  readonly grid: ArrayLike<number>;
  readonly levels: ArrayLike<number>;
}

/** Samples a level on a grid and adds every top and dip between the samples. `columns` are those of all probes there. */
export function sampledLevel(level: LevelOf, grid: Float64Array, columns: readonly ComplexColumn[]): SampledLevel {
  const levels = level.column(grid, columns);
  const turned = [...turns(grid, levels, 1, level.slope), ...turns(grid, levels, -1, level.slope)];
  if (turned.length === 0) return { level, grid, levels };
  const all = new Float64Array(grid.length + turned.length);
  all.set(grid);
  all.set(turned, grid.length);
  all.sort();
  // Both rise, so that one walk along the grid finds the samples among them; only the turns are worked out.
  let next = 0;
  return { level, grid: all, levels: all.map((f) => (f === grid[next] ? levels[next++]! : level.at(f))) };
}

/** Half the step over which the slope of a filter is taken, as a change of ln f. */
const STEP = 1e-4;
/** dB in one neper. */
export const NEPER = 20 / Math.LN10;

/** The level of a system behind a filter. */
function behindFilter(level: LevelOf, filter: Filter): LevelOf {
  const fill = compileFilterLevel(filter);
  const passed = (frequencies: Float64Array, out: Float64Array) => fill(frequencies as FrequencyGrid, out);
  const [one, lowered] = [new Float64Array(1), new Float64Array(1)];
  const at = (frequency: number): number => {
    one[0] = frequency;
    passed(one, lowered);
    return lowered[0]!;
  };
  return {
    at: (frequency) => level.at(frequency) + at(frequency),
    slope: (frequency) => {
      const change = at(frequency * Math.exp(STEP)) - at(frequency * Math.exp(-STEP));
      return level.slope(frequency) + change / (2 * STEP * NEPER);
    },
    column: (frequencies, swept) => {
      const out = new Float64Array(frequencies.length);
      passed(frequencies, out);
      const bare = level.column(frequencies, swept);
      for (let i = 0; i < out.length; i++) out[i]! += bare[i]!;
      return out;
    },
  };
}

/** A sampled level, and the level to cross. */
export interface Crossed extends SampledLevel {
  readonly wanted: number;
}

/** The level of a system in the band of the options, and the level to cross in it. `usual` is the reference if none is given. */
export function setting(
  system: System,
  options: CutoffOptions,
  [path, usual]: readonly [path: string, usual: Reference] = ['cutoff', 'asymptote'],
  points = POINTS,
): Crossed {
  const read = readFields(path, options, bandShape);
  return settings(system, { ...read, reference: read.reference ?? usual }, points)(read.filter);
}

/** The same behind any filter, from one sweep. */
function settings(
  system: System,
  { drop = HALF_POWER, reference = 'asymptote', from = LOWEST, to = HIGHEST }: Omit<ReadOptions, 'filter'>,
  points = POINTS,
): (filter: Filter | undefined) => Crossed {
  const bare = levelOf(system);
  const grid = logarithmicGrid(from, to, points);
  let columns: readonly ComplexColumn[] | undefined;
  return (filter) => {
    const level = filter === undefined ? bare : behindFilter(bare, filter);
    const top = referenceIn(system, reference, level);
    columns ??= sweptColumns(compiledSystem(system), grid);
    const sampled = sampledLevel(level, grid, columns);
    return { ...sampled, wanted: top(sampled) - drop };
  };
}

/** The level of a reference. Without one, nothing else is worked out; only the maximum needs the samples. */
export function referenceIn(system: System, reference: Reference, level: LevelOf): (sampled: SampledLevel) => number {
  if (reference === 'maximum') return ({ levels }) => Math.max(...Array.from(levels));
  const top = statedLevel(system, reference, level);
  return () => top;
}

function statedLevel(system: System, reference: Exclude<Reference, 'maximum'>, level: LevelOf): number {
  if (reference === 'asymptote') return referenceLevel(system);
  if ('level' in reference) return readFields('reference', reference, { level: anySign('level') }).level;
  const { frequency } = readFields('reference', reference, { frequency: positive('frequency') });
  return level.at(frequency);
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
  crossingsAmong(system, options);

/** The same with another number of points. */
export function crossingsAmong(system: System, options: CutoffOptions, points?: number): readonly Frequency[] {
  const crossed = setting(system, options, undefined, points);
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
export const cutoff = (system: System, options: CutoffOptions = {}): Cutoff => lowestAbove(setting(system, options));

/** The half-power cut-offs of a system behind any filter and without one. It is swept once. */
export function cutoffsBehind(
  system: System,
  band: Pick<ReadOptions, 'from' | 'to' | 'reference'>,
): (filter?: Filter) => Cutoff {
  const settingOf = settings(system, band);
  return (filter) => lowestAbove(settingOf(filter));
}

/** The same with another number of points. */
export const cutoffAmong = (system: System, options: CutoffOptions, points: number): Cutoff =>
  lowestAbove(setting(system, options, undefined, points));

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
