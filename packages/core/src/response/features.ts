import type { System } from '../enclosure/index.js';
import type { CompiledNetwork } from '../network/index.js';
import type { ComplexColumn } from '../numeric/index.js';
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
import { atFrequency } from './at-frequency.js';
import { compiledSystem, probeIndex, sweptColumns } from './compile.js';
import { HALF_POWER, lowestAbove, sampledLevel } from './cutoff.js';
import { type Extremum, extrema, tops } from './extremum.js';
import { levelOf, referenceLevel } from './level.js';
import { openTerminals } from './respond.js';

const POINTS = 1000;

/** What people look for in the curves of a system, in one record that survives JSON. */
export interface Features {
  readonly referenceLevel: Level;
  /** Absent where the level does not fall that far in the band. */
  readonly f3?: Frequency;
  readonly f6?: Frequency;
  readonly f10?: Frequency;
  /** Peaks of the level, each above the reference, dB. */
  readonly peaks: readonly Extremum[];
  /** The greatest minus the least level from f3 to the end of the band, dB. */
  readonly ripple: number;
  readonly impedanceMaxima: readonly Extremum[];
  readonly impedanceMinima: readonly Extremum[];
}

/**
 * Cut-offs, peaks, ripple and extrema of the impedance of a system, for 1 V rms.
 *
 * @validity features wider than the spacing of the 1000 points of the band; each extremum is where the slope vanishes
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
  const grid = logarithmicGrid(from, to, POINTS);
  const reference = referenceLevel(system);
  const network = compiledSystem(system);
  const columns = sweptColumns(network, grid);
  const sampled = sampledLevel(levelOf(system), grid, columns);
  const at = (drop: number) => {
    const found = lowestAbove({ ...sampled, wanted: reference - drop });
    return found.ok ? found.frequency : undefined;
  };
  const [f3, f6, f10] = [at(HALF_POWER), at(6), at(10)];
  // The samples with their tops and dips, and the cut-off itself.
  const start = f3 ?? from;
  const passed = Array.from(sampled.levels).filter((_, i) => sampled.grid[i]! >= start);
  if (f3 !== undefined) passed.push(reference - HALF_POWER);
  const peaks = tops(sampled.levels).map((i) => ({
    frequency: si('frequency', sampled.grid[i]!),
    value: sampled.levels[i]! - reference,
  }));
  return {
    referenceLevel: reference,
    ...(f3 !== undefined && { f3 }),
    ...(f6 !== undefined && { f6 }),
    ...(f10 !== undefined && { f10 }),
    peaks: peaks.filter(({ value }) => value > 1e-9),
    ripple: passed.length === 0 ? 0 : Math.max(...passed) - Math.min(...passed),
    ...impedanceExtrema(network, grid, columns),
  };
}

function impedanceExtrema(
  network: CompiledNetwork,
  grid: Float64Array,
  columns: readonly ComplexColumn[],
): Pick<Features, 'impedanceMaxima' | 'impedanceMinima'> {
  const [e, i] = [probeIndex(network.probes, 'terminalVoltage'), probeIndex(network.probes, 'current')];
  const [voltage, current] = [columns[e] as ComplexColumn, columns[i] as ComplexColumn];
  const squares = new Float64Array(grid.length);
  for (let k = 0; k < grid.length; k++) {
    const [a, b, c, d] = [voltage.re[k], voltage.im[k], current.re[k], current.im[k]] as [
      number,
      number,
      number,
      number,
    ];
    const flows = c * c + d * d;
    if (!(flows > 0)) throw openTerminals(grid[k]!);
    squares[k] = (a * a + b * b) / flows;
  }
  const { magnitude, slope } = atFrequency(network);
  const impedance = (f: number) => magnitude(e, f) / magnitude(i, f);
  const change = (f: number) => slope(e, f) - slope(i, f);
  return {
    impedanceMaxima: extrema(grid, squares, 1, impedance, change),
    impedanceMinima: extrema(grid, squares, -1, impedance, change),
  };
}
