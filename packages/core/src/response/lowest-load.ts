import type { System } from '../enclosure/index.js';
import { boundedMinimum } from '../numeric/index.js';
import { type FrequencyInput, logarithmicGrid, optional, positive, readFields, si } from '../quantity/index.js';
import { compileNetwork, probeColumns, probeNamed } from './compile.js';
import type { Extremum } from './features.js';
import { openTerminals } from './respond.js';

/** What an amplifier has to bear in a band. */
export interface LowestLoad {
  /** Least magnitude of the impedance at the terminals, Ω. */
  readonly impedance: Extremum;
  /** Phase of the impedance where it is farthest from a resistance, rad: above zero the current lags behind. */
  readonly angle: Extremum;
}

const POINTS = 800;

/**
 * Least impedance and greatest current angle of a system in a band, each with its frequency: what its amplifier must bear.
 *
 * $$ \min_f |Z(f)|,\quad \max_f |\arg Z(f)|,\quad Z = e/i $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $|Z|$ | `impedance.value` | Ω | at the terminals, without the source resistance |
 * | $\arg Z$ | `angle.value` | rad | phase of the voltage against the current |
 *
 * The power that an amplifier turns into heat grows as the impedance falls and as the angle grows, and the two do not fall
 * together: near the least impedance the angle is small.
 *
 * @validity impedances without features narrower than the 800 points of the band
 * @neglects warming of the coil, which raises Re; level
 * @returns ohms, radians, and where
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
  const load = impedanceOf(system);
  const least = (cost: (f: number) => number): number => {
    const grid = logarithmicGrid(from, to, POINTS);
    const costs = grid.map(cost);
    const at = costs.reduce((best, value, i) => (value < (costs[best] as number) ? i : best), 0);
    const [low, high] = [grid[Math.max(at - 1, 0)] as number, grid[Math.min(at + 1, POINTS - 1)] as number];
    const { x, value } = boundedMinimum(cost, low, high, 1e-9);
    // At an end of the band the least value is that end itself.
    return value < (costs[at] as number) ? x : (grid[at] as number);
  };
  const extremum = (f: number, value: number): Extremum => ({ frequency: si('frequency', f), value });
  const lowest = least((f) => load(f).size);
  const steepest = least((f) => -Math.abs(load(f).angle));
  return {
    impedance: extremum(lowest, load(lowest).size),
    angle: extremum(steepest, load(steepest).angle),
  };
}

/** Magnitude and phase of the impedance at the terminals as a function of frequency. */
function impedanceOf({ network }: System): (frequency: number) => { readonly size: number; readonly angle: number } {
  const compiled = compileNetwork(network);
  return (frequency) => {
    const columns = probeColumns(compiled, Float64Array.of(frequency));
    const read = (name: string) => {
      const { re, im } = probeNamed(columns, name);
      return [re[0], im[0]] as [number, number];
    };
    const [[a, b], [c, d]] = [read('terminalVoltage'), read('current')];
    const flows = Math.hypot(c, d);
    if (!(flows > 0)) throw openTerminals(frequency);
    return { size: Math.hypot(a, b) / flows, angle: Math.atan2(b * c - a * d, a * c + b * d) };
  };
}
