import type { System } from '../enclosure/index.js';
import { boundedMinimum, type ComplexColumn } from '../numeric/index.js';
import { type FrequencyInput, logarithmicGrid, optional, positive, readFields, si } from '../quantity/index.js';
import { atFrequency } from './at-frequency.js';
import { compiledSystem, probeIndex, sweptColumns } from './compile.js';
import { type Extremum, tops, turns } from './extremum.js';
import { openTerminals } from './respond.js';

/** The load on an amplifier in a band. */
export interface LowestLoad {
  /** Least magnitude of the impedance at the terminals, Ω. */
  readonly impedance: Extremum;
  /** Phase of the impedance where it is farthest from a resistance, rad. Above zero the current lags behind the voltage. */
  readonly angle: Extremum;
}

const POINTS = 800;

/**
 * Least impedance and greatest phase angle of a system in a band, each with its frequency: the load on the amplifier.
 *
 * $$ \min_f |Z(f)|,\quad \max_f |\arg Z(f)|,\quad Z = e/i $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $|Z|$ | `impedance.value` | Ω | at the terminals, without the source resistance |
 * | $\arg Z$ | `angle.value` | rad | phase of the voltage against the current |
 *
 * An amplifier turns more power into heat when the impedance is lower and when the angle is greater. The two do not coincide:
 * near the least impedance the angle is small.
 *
 * @validity impedances without features narrower than the spacing of the 800 points of the band
 * @neglects warming of the coil, which raises Re; level
 * @returns ohms and radians, each with its frequency
 * @throws InputError those of the band; `empty` for a probe that is not there, `inconsistent` where no current flows
 * @source small1972direct driver impedance
 * @example lowestLoad(system, { from: '20 Hz', to: '200 Hz' }).impedance // { frequency: 41.3, value: 5.9 }
 */
export function lowestLoad(
  system: System,
  band: { readonly from?: FrequencyInput; readonly to?: FrequencyInput } = {},
): LowestLoad {
  const { from = 20, to = 200 } = readFields('band', band, {
    from: optional(positive('frequency')),
    to: optional(positive('frequency')),
  });
  const network = compiledSystem(system);
  const [e, i] = [probeIndex(network.probes, 'terminalVoltage'), probeIndex(network.probes, 'current')];
  const grid = logarithmicGrid(from, to, POINTS);
  const columns = sweptColumns(network, grid);
  const loads = Float64Array.from(grid, (f, k) => loadAt(columns, e, i, f, k).size);
  const angles = Float64Array.from(grid, (f, k) => Math.abs(loadAt(columns, e, i, f, k).angle));
  const { slope } = atFrequency(network);
  const one = (f: number) => loadAt(sweptColumns(network, Float64Array.of(f)), e, i, f, 0);

  // Each dip and each top between the samples, and both ends. Of two that are nearly equal, the samples alone may pick the wrong one.
  const dips = turns(grid, loads, -1, (f) => slope(e, f) - slope(i, f));
  const lowest = [from, to, ...dips].reduce((a, b) => (one(b).size < one(a).size ? b : a));
  const steep = (f: number) => Math.abs(one(f).angle);
  const peaks = [0, ...tops(angles), POINTS - 1].map((k) => topOf(steep, grid, k));
  const steepest = [from, to, ...peaks].reduce((a, b) => (steep(b) > steep(a) ? b : a));
  return {
    impedance: { frequency: si('frequency', lowest), value: one(lowest).size },
    angle: { frequency: si('frequency', steepest), value: one(steepest).angle },
  };
}

/** The top of a function next to a sample. */
const topOf = (f: (x: number) => number, grid: Float64Array, k: number): number =>
  boundedMinimum((x) => -f(x), grid[Math.max(k - 1, 0)]!, grid[Math.min(k + 1, POINTS - 1)]!, 1e-9).x;

/** Magnitude and phase of the impedance at the terminals, at one place of the columns. */
function loadAt(columns: readonly ComplexColumn[], e: number, i: number, frequency: number, k: number) {
  const [voltage, current] = [columns[e] as ComplexColumn, columns[i] as ComplexColumn];
  const [a, b, c, d] = [voltage.re[k], voltage.im[k], current.re[k], current.im[k]] as [number, number, number, number];
  const flows = Math.hypot(c, d);
  if (!(flows > 0)) throw openTerminals(frequency);
  return { size: Math.hypot(a, b) / flows, angle: Math.atan2(b * c - a * d, a * c + b * d) };
}
