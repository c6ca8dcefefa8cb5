import type { System } from '../enclosure/index.js';
import type { CompiledNetwork } from '../network/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import { type Frequency, type FrequencyInput, type Level, logarithmicGrid, readFields, si } from '../quantity/index.js';
import { atFrequency } from './at-frequency.js';
import { compiledSystem, probeIndex, sweptColumns } from './compile.js';
import { HALF_POWER, lowestAbove } from './cutoff.js';
import { type Extremum, extrema, tops } from './extremum.js';
import { levelOf } from './level.js';
import { passbandIn } from './passband.js';
import { type Reference, referenceIn, referenceShape } from './reference.js';
import { openTerminals } from './respond.js';
import { sampledLevel } from './sampled-level.js';

const POINTS = 1000;

/** What people look for in the curves of a system, in one record that survives JSON. */
export interface Features {
  /** The level from which the others are counted: the asymptote, unless another reference was asked for. */
  readonly referenceLevel: Level;
  /** Absent where the level does not fall that far in the band. */
  readonly f3?: Frequency;
  readonly f6?: Frequency;
  readonly f10?: Frequency;
  /** Where the level falls as far above its maximum. Only from another reference than the asymptote. */
  readonly upper?: { readonly f3?: Frequency; readonly f6?: Frequency; readonly f10?: Frequency };
  /** Peaks of the level, each above the reference, dB. */
  readonly peaks: readonly Extremum[];
  /**
   * The greatest minus the least level from f3 to its upper end, or else to the end of the band, dB. What lies below half power
   * does not count, so that it is 0 where no level is high enough.
   */
  readonly ripple: number;
  readonly impedanceMaxima: readonly Extremum[];
  readonly impedanceMinima: readonly Extremum[];
}

/**
 * Cut-offs, peaks, ripple and extrema of the impedance of a system, for 1 V rms. Cut-offs from the asymptote (default) hold up
 * to the end of the band. A band-pass has no asymptote: from any other reference, such as the maximum, the cut-offs bound the
 * stretch around the maximum, and `upper` has those above it.
 *
 * @validity features wider than the spacing of the 1000 points of the band; each extremum is where the slope vanishes
 * @neglects what `respond` neglects
 * @returns a record that survives JSON
 * @throws InputError; `inconsistent` for a system without an asymptote, if no other reference is given
 * @source small1972closed1 peak of the response
 * @example features(ventedBox({ drivers, netVolume: '45 L', fb: '29 Hz' })).impedanceMaxima.length // 2
 */
export function features(
  system: System,
  band: { readonly from?: FrequencyInput; readonly to?: FrequencyInput; readonly reference?: Reference } = {},
): Features {
  const { from = 2, to = 200, reference = 'asymptote' } = readFields('band', band, referenceShape);
  const grid = logarithmicGrid(from, to, POINTS);
  const level = levelOf(system);
  const referenceOf = referenceIn(system, reference, level);
  const network = compiledSystem(system);
  const columns = sweptColumns(network, grid);
  const sampled = sampledLevel(level, grid, columns);
  const top = referenceOf(sampled);
  const at = (drop: number) => {
    const crossed = { ...sampled, wanted: top - drop };
    if (reference !== 'asymptote') return passbandIn(crossed);
    const found = lowestAbove(crossed);
    return found.ok ? { lower: found.frequency } : {};
  };
  const falls = { f3: at(HALF_POWER), f6: at(6), f10: at(10) };
  const edges = (edge: 'lower' | 'upper') =>
    Object.fromEntries(
      Object.entries(falls).flatMap(([name, found]) => (found[edge] === undefined ? [] : [[name, found[edge]]])),
    ) as Pick<Features, 'f3' | 'f6' | 'f10'>;
  const { lower: f3, upper: end } = falls.f3;
  const [start, stop] = [f3 ?? from, end ?? to];
  // The samples with their tops and dips, and the cut-offs themselves.
  const passed = Array.from(sampled.levels).filter(
    (level, i) => level >= top - HALF_POWER && sampled.grid[i]! >= start && sampled.grid[i]! <= stop,
  );
  if (f3 !== undefined || end !== undefined) passed.push(top - HALF_POWER);
  const peaks = tops(sampled.levels).map((i) => ({
    frequency: si('frequency', sampled.grid[i]!),
    value: sampled.levels[i]! - top,
  }));
  return {
    referenceLevel: si('level', top),
    ...edges('lower'),
    ...(reference !== 'asymptote' && { upper: edges('upper') }),
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
    const a = voltage.re[k]!;
    const b = voltage.im[k]!;
    const c = current.re[k]!;
    const d = current.im[k]!;
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
