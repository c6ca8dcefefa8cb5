import type { System } from '../enclosure/index.js';
import {
  type Frequency,
  type FrequencyInput,
  type Level,
  logarithmicGrid,
  optional,
  positive,
  readFields,
  si,
} from '../quantity/index.js';
import { compileNetwork } from './compile.js';
import { HALF_POWER, lowestAbove } from './cutoff.js';
import { levelOf, referenceLevel } from './level.js';
import { respond } from './respond.js';

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
 * @validity features wider than a few of the 2000 points of the band, each extremum by a parabola through three of them
 * @neglects what `respond` neglects
 * @returns a record that survives JSON
 * @throws InputError
 * @source small1972closed1 peak of the response
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
  const level = levelOf(compileNetwork(system.network), system.air.density);
  const at = (drop: number) => {
    const { frequencies: grid, levelHalfSpace: levels } = columns;
    const found = lowestAbove({ level, grid, levels, wanted: reference - drop });
    return found.ok ? found.frequency : undefined;
  };
  const [f3, f6, f10] = [at(HALF_POWER), at(6), at(10)];
  const [tops, dips] = [1, -1].map((sign) => extrema(columns.frequencies, columns.levelHalfSpace, sign as 1 | -1)) as [
    readonly Extremum[],
    readonly Extremum[],
  ];
  // Samples, and what lies between them: the cut-off itself, the tops and the dips.
  const start = f3 ?? from;
  const passed = [
    ...(f3 === undefined ? [] : [reference - HALF_POWER]),
    ...columns.levelHalfSpace.filter((_, i) => (columns.frequencies[i] as number) >= start),
    ...[...tops, ...dips].flatMap(({ frequency, value }) => (frequency >= start ? [value] : [])),
  ];
  return {
    referenceLevel: reference,
    ...(f3 !== undefined && { f3 }),
    ...(f6 !== undefined && { f6 }),
    ...(f10 !== undefined && { f10 }),
    peaks: tops
      .map(({ frequency, value }) => ({ frequency, value: value - reference }))
      .filter(({ value }) => value > 1e-9),
    ripple: passed.length === 0 ? 0 : Math.max(...passed) - Math.min(...passed),
    impedanceMaxima: extrema(columns.frequencies, columns.impedance, 1),
    impedanceMinima: extrema(columns.frequencies, columns.impedance, -1),
  };
}
