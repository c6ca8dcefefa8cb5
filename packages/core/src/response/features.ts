import type { System } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { complexColumn, withoutCoilInductance } from '../network/index.js';
import { bracketedRoot } from '../numeric/index.js';
import { type Frequency, type FrequencyInput, type Level, type LevelInput, logarithmicGrid, positive, anySign, optional, readFields, si } from '../quantity/index.js';
import { compileNetwork, probeIndex } from './compile.js';
import { levelColumn, respond } from './columns.js';

/** Half power in dB: 10 log10 2. */
export const HALF_POWER = 10 * Math.log10(2);

/** Level at 1 m in half space as a function of frequency, for 1 V rms at the drive. */
export function compileLevel(system: System): (frequency: number) => number {
  const { probes, sweep } = compileNetwork(system.network);
  const row = probeIndex(probes, 'radiatedFlow');
  const out = probes.map(() => complexColumn(1));
  const at = new Float64Array(1);
  const level = new Float64Array(1);
  return (frequency) => {
    at[0] = frequency;
    sweep(at, out);
    levelColumn(at, out[row] as (typeof out)[number], system.air.density, 1, level);
    return level[0] as number;
  };
}

/**
 * Level that a system approaches at high frequency when its coil had no inductance, per volt of drive: the reference of
 * its cut-offs. For one driver in half space
 *
 * $$ L_\infty = 20\log_{10}\frac{\rho\,Bl\,S_d}{2\pi\,M_{ms}(R_g + R_e)\cdot 20\,\mu\mathrm{Pa}} $$
 *
 * but it is read off the network, so that it holds for any family.
 *
 * @validity systems whose level approaches a constant
 * @neglects coil inductance, by definition
 * @returns dB at 1 m in half space for 1 V rms
 * @source small1972direct
 * @check response.reference-level
 * @example referenceLevel(closedBox({ drivers, netVolume: '40 L' }))
 */
export function referenceLevel(system: System): Level {
  const level = compileLevel({ ...system, network: withoutCoilInductance(system.network) });
  // Level approaches its limit as 1/f²; two far points remove that term.
  const far = 1e5;
  return si('level', (4 * level(2 * far) - level(far)) / 3);
}

/** What a cut-off is counted from. */
export type Reference = 'asymptote' | 'maximum' | { readonly level: LevelInput } | { readonly frequency: FrequencyInput };

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
      if (got === 'asymptote' || got === 'maximum' || (typeof got === 'object' && got !== null)) return got as Reference;
      const expected = "'asymptote', 'maximum', a record with level, or one with frequency";
      faults.push({ code: 'unknown-field', path, got, expected, remedy: 'Choose one of them.' });
      return undefined;
    },
  }),
  from: optional(positive('frequency')),
  to: optional(positive('frequency')),
};

const POINTS = 400;

function setting(system: System, options: CutoffOptions) {
  const read = readFields('cutoff', options, bandShape);
  const { drop = HALF_POWER, reference = 'asymptote', from = 2, to = 200 } = read;
  const level = compileLevel(system);
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
 * @throws InputError
 * @example levelCrossings(system, { drop: 3 })
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
 * @check response.f3
 * @example cutoff(system) // { ok: true, frequency: 31.2 }
 */
export function cutoff(system: System, options: CutoffOptions = {}): Cutoff {
  const { level, grid, levels, wanted } = setting(system, options);
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

/** A frequency and the value there. */
export interface Extremum {
  readonly frequency: Frequency;
  readonly value: number;
}

/** Local extrema of sampled values: a parabola in log f through three points. */
function extrema(frequencies: Float64Array, values: Float64Array, sign: 1 | -1): readonly Extremum[] {
  const found: Extremum[] = [];
  for (let i = 1; i < frequencies.length - 1; i++) {
    const [a, b, c] = [values[i - 1], values[i], values[i + 1]] as [number, number, number];
    if (!(sign * b > sign * a && sign * b >= sign * c)) continue;
    const bend = a - 2 * b + c;
    const offset = bend === 0 ? 0 : (0.5 * (a - c)) / bend;
    const step = Math.log((frequencies[i + 1] as number) / (frequencies[i] as number));
    const frequency = si('frequency', (frequencies[i] as number) * Math.exp(offset * step));
    found.push({ frequency, value: b - 0.25 * (a - c) * offset });
  }
  return found;
}

/** What a reader of curves looks for, in one record that survives JSON. */
export interface Features {
  readonly referenceLevel: Level;
  /** Absent where the level does not fall that far in the band. */
  readonly f3?: Frequency;
  readonly f6?: Frequency;
  readonly f10?: Frequency;
  /** Greatest rises of the level, each over the reference, dB. */
  readonly peaks: readonly Extremum[];
  /** Greatest minus least level from f3 to the end of the band, dB. */
  readonly ripple: number;
  readonly impedanceMaxima: readonly Extremum[];
  readonly impedanceMinima: readonly Extremum[];
}

/**
 * Cut-offs, peaks, ripple and extrema of the impedance of a system, for 1 V rms.
 *
 * @throws InputError
 * @example features(ventedBox({ drivers, netVolume: '45 L', fb: '29 Hz' })).impedanceMaxima.length // 2
 */
export function features(
  system: System,
  band: { readonly from?: FrequencyInput; readonly to?: FrequencyInput } = {},
): Features {
  const { from = 2, to = 200 } = readFields('band', band, {
    from: optional(positive('frequency')),
    to: optional(positive('frequency')),
  });
  const columns = respond(system, logarithmicGrid(from, to, 2000));
  const reference = referenceLevel(system);
  const at = (drop: number) => {
    const found = cutoff(system, { ...band, drop });
    return found.ok ? found.frequency : undefined;
  };
  const [f3, f6, f10] = [at(HALF_POWER), at(6), at(10)];
  const passed = columns.levelHalfSpace.filter((_, i) => (columns.frequencies[i] as number) >= (f3 ?? from));
  return {
    referenceLevel: reference,
    ...(f3 !== undefined && { f3 }),
    ...(f6 !== undefined && { f6 }),
    ...(f10 !== undefined && { f10 }),
    peaks: extrema(columns.frequencies, columns.levelHalfSpace, 1)
      .map(({ frequency, value }) => ({ frequency, value: value - reference }))
      .filter(({ value }) => value > 1e-9),
    ripple: passed.length === 0 ? 0 : Math.max(...passed) - Math.min(...passed),
    impedanceMaxima: extrema(columns.frequencies, columns.impedance, 1),
    impedanceMinima: extrema(columns.frequencies, columns.impedance, -1),
  };
}
