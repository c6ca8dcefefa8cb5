import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { bracketedRoot } from '../numeric/index.js';
import {
  anySign,
  type Frequency,
  type FrequencyInput,
  type LevelInput,
  logarithmicGrid,
  optional,
  positive,
  readFields,
  si,
} from '../quantity/index.js';
import { compileNetwork } from './compile.js';
import { levelOf, referenceLevel } from './level.js';

/** Half power in dB: 10 log10 2. */
export const HALF_POWER = 10 * Math.log10(2);

/** What a cut-off is counted from. */
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
  /** Band in which the level must stay above; default 2 Hz to 200 Hz. */
  readonly from?: FrequencyInput;
  readonly to?: FrequencyInput;
}

const bandShape = {
  drop: optional(anySign('level')),
  reference: optional({
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

const POINTS = 400;

/** A level over frequency, sampled, and the level to cross. */
interface Sampled {
  readonly level: (frequency: number) => number;
  readonly grid: Float64Array;
  readonly levels: Float64Array;
  readonly wanted: number;
}

function setting(system: System, options: CutoffOptions): Sampled {
  const read = readFields('cutoff', options, bandShape);
  const { drop = HALF_POWER, reference = 'asymptote', from = 2, to = 200 } = read;
  const level = levelOf(compileNetwork(system.network), system.air.density);
  const grid = logarithmicGrid(from, to, POINTS);
  const levels = grid.map(level);
  let top: number;
  if (reference === 'asymptote') top = referenceLevel(system);
  else if (reference === 'maximum') top = levels.reduce((a, b) => Math.max(a, b), -Infinity);
  else if ('level' in reference) top = readFields('reference', reference, { level: anySign('level') }).level;
  else top = level(readFields('reference', reference, { frequency: positive('frequency') }).frequency);
  return { level, grid, levels, wanted: top - drop };
}

/** Refines a crossing between two neighbours of the grid. */
function crossing(level: (f: number) => number, wanted: number, below: number, above: number): Frequency {
  const root = bracketedRoot((f) => level(f) - wanted, below, above, 1e-12 * above);
  return si('frequency', root.ok ? root.x : above);
}

/**
 * All frequencies in a band at which the level passes the reference minus a drop, rising order.
 *
 * @validity responses without features narrower than the 400 points of the band
 * @neglects what `respond` neglects
 * @returns Hz
 * @throws InputError
 * @source small1972direct
 * @example levelCrossings(system, { drop: 6 })
 */
export function levelCrossings(system: System, options: CutoffOptions = {}): readonly Frequency[] {
  const { level, grid, levels, wanted } = setting(system, options);
  return [...grid.keys()].slice(1).flatMap((i) => {
    const before = (levels[i - 1] as number) >= wanted;
    return before === (levels[i] as number) >= wanted
      ? []
      : [crossing(level, wanted, grid[i - 1] as number, grid[i] as number)];
  });
}

/** A cut-off, or why there is none in the band. */
export type Cutoff = { readonly ok: true; readonly frequency: Frequency } | Impossible;

/**
 * The lowest frequency above which the level stays at or above the reference minus a drop, up to the end of the band:
 * f3 by default (half power), f6 and f10 by `drop`.
 *
 * @validity responses without features narrower than the 400 points of the band
 * @throws InputError
 * @source small1972direct
 * @example cutoff(system) // { ok: true, frequency: 31.2 }
 */
export function cutoff(system: System, options: CutoffOptions = {}): Cutoff {
  return lowestAbove(setting(system, options));
}

/** The same for a response that was sampled already. */
export function lowestAbove({ level, grid, levels, wanted }: Sampled): Cutoff {
  const last = grid.length - 1;
  if ((levels[last] as number) < wanted) {
    const text = `at ${grid[last]} Hz, the end of the band, the level is already ${(wanted - (levels[last] as number)).toFixed(2)} dB too low`;
    return impossible('below-at-end', text);
  }
  for (let i = last; i > 0; i--) {
    if ((levels[i - 1] as number) < wanted) {
      return { ok: true, frequency: crossing(level, wanted, grid[i - 1] as number, grid[i] as number) };
    }
  }
  return impossible('above-throughout', `the level is high enough down to ${grid[0]} Hz, where the band begins`);
}
