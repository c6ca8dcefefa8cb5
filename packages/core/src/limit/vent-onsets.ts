import { flowLossField } from '../duct/flow-loss.js';
import { type FlowLoss, quadraticLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { complexColumns } from '../numeric/index.js';
import { type FrequencyGrid, frequencyGrid, given, optional, readFields } from '../quantity/index.js';
import { givenSystem } from '../response/compile.js';
import { refuseFallingLoss } from '../response/falling-loss.js';
import { levelColumn } from '../response/index.js';
import { ventAtLevel } from '../response/vent-at-level.js';
import { type NoiseOnset, onsetSpan, openingOf, type VentSection } from '../vent/index.js';

export interface VentOnsetOptions {
  /** What the vent loses by its speed; default nothing. With a loss it takes more drive to reach a speed. */
  readonly loss?: FlowLoss;
  /** Default: all published ones. */
  readonly onsets?: readonly NoiseOnset[];
}

const shape = { loss: optional(flowLossField), onsets: optional(given<readonly NoiseOnset[]>()) };

/** Where an onset is reached, at each frequency. */
export interface OnsetColumns {
  readonly driveVoltageRms: Float64Array;
  /** dB at 1 m in half space. */
  readonly levelHalfSpace: Float64Array;
  /** Which onset it is. */
  readonly onset: readonly string[];
}

/** Up to which level a vent is quiet, and from which level on it is noisy. */
export interface VentOnsets {
  readonly frequencies: FrequencyGrid;
  /** Below this every published onset lies higher. */
  readonly quiet: OnsetColumns;
  /** Above this every published onset is passed. */
  readonly noisy: OnsetColumns;
}

/**
 * The levels between which it is doubtful whether a vent is heard: at the lower one the lowest published onset is reached, at the
 * upper one the highest.
 *
 * $$ e = \frac{\hat u_{onset}\,|1 + r(\hat u_{onset})\,S Y|}{\hat u_0/e_0} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $e$ | `driveVoltageRms` | V | drive at which the onset is reached |
 * | $\hat u_{onset}$ | `onsets` | m/s | speed of the onset, see `ventNoise` |
 * | $\hat u_0/e_0$ | | m/(s·V) | speed without loss per volt |
 *
 * @validity steady sines; as `ventNoise` and `respondAtLevel`
 * @neglects as those
 * @returns two columns each of drives and levels
 * @throws InputError those of `respondAtLevel`
 * @source holman2005 formation of jets; salvatti2002 recommended speed; ingard1967 loss
 * @example ventOnsets(box, { diameter: '75 mm' }, [25, 30, 40]).quiet.levelHalfSpace
 */
export function ventOnsets(
  system: System,
  vent: VentSection,
  frequencies: ArrayLike<number>,
  options: VentOnsetOptions = {},
): VentOnsets {
  const { loss = quadraticLoss({ outward: 0 }), onsets } = readFields('options', options, shape);
  const grid = frequencyGrid(frequencies);
  const { air } = givenSystem(system);
  const { probes, driveFor, fill } = ventAtLevel(system, grid);
  refuseFallingLoss(loss, grid, air);
  const spanAt = onsetSpan([{ opening: openingOf(vent), share: 1 }], air, onsets, 'options.onsets');
  const swept = complexColumns(probes.length, grid.length);
  const columns = (side: 'quiet' | 'noisy'): OnsetColumns => {
    const driveVoltageRms = new Float64Array(grid.length);
    const onset = Array.from(grid, (frequency, i) => {
      const { airSpeedPeak, onset: reached } = spanAt(frequency)[side];
      driveVoltageRms[i] = driveFor(loss, i, airSpeedPeak);
      fill(i, loss.resistance(airSpeedPeak, frequency, air), swept);
      return reached.name;
    });
    const levelHalfSpace = new Float64Array(grid.length);
    levelColumn(grid, swept[probes.indexOf('radiatedFlow')]!, air.density, 1, levelHalfSpace);
    for (let i = 0; i < grid.length; i++) levelHalfSpace[i]! += 20 * Math.log10(driveVoltageRms[i]!);
    return { driveVoltageRms, levelHalfSpace, onset };
  };
  return { frequencies: grid, quiet: columns('quiet'), noisy: columns('noisy') };
}
