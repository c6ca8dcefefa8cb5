import { flowLossField } from '../duct/flow-loss.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { complexColumns } from '../numeric/index.js';
import { frequencyGrid, positive, readFields } from '../quantity/index.js';
import type { AtLevelOptions } from './at-level.js';
import { refuseFallingLoss } from './falling-loss.js';
import { ventAtLevel } from './vent-at-level.js';

/** One vent, or several alike. */
export interface ThirdHarmonicOptions extends AtLevelOptions {
  readonly loss: FlowLoss;
}

const shape = { driveVoltageRms: positive('voltageRms'), loss: flowLossField };

/** A quadratic law makes odd harmonics of its pressure; the third is this share of the fundamental, in antiphase. */
const THIRD = 1 / 5;

/**
 * How strong the third harmonic is that a quadratic loss in the vent makes, over the fundamental: in the sound pressure, at each
 * frequency of the fundamental. The pressure of the loss at three times the frequency drives the linear system from its vent:
 *
 * $$ u = \hat u\sin\omega t \;\Rightarrow\; \Delta p = \hat p\,\left(\sin\omega t - \tfrac15\sin3\omega t - \dots\right),\qquad
 *    \frac{p_3}{p_1} = \frac{3\,T(3\omega)\,\hat p}{5\,U(\omega)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\hat p$ | `loss` | Pa | fundamental of the pressure that is lost |
 * | $T$ | | m³/(s·Pa) | what a pressure in the vent does to the flow out of the system |
 * | $U$ | | m³/s | flow out of the system |
 *
 * @validity a loss that is quadratic alike in both directions, up to about 2 dB of compression: within 1 dB
 * @neglects even harmonics of a vent with unlike ends; that the loss acts on the harmonic as well; the driver's own distortion
 * @returns ratios of sound pressure, one for each frequency
 * @throws InputError those of `respondAtLevel`
 * @source ingard1967 quasi-steady loss; Fourier series of sin |sin|
 * @example ventThirdHarmonic(box, [27], { driveVoltageRms: '20 V', loss: ventLoss({ vent }).nominal })
 */
export function ventThirdHarmonic(
  system: System,
  frequencies: ArrayLike<number>,
  options: ThirdHarmonicOptions,
): Float64Array {
  const { driveVoltageRms, loss } = readFields('options', options, shape);
  const grid = frequencyGrid(frequencies);
  const first = ventAtLevel(system, grid);
  refuseFallingLoss(loss, grid, system.air);
  const third = ventAtLevel(system, frequencyGrid(grid.map((f) => 3 * f)));
  const place = (name: string) => first.probes.indexOf(name);
  const swept = complexColumns(first.probes.length, grid.length);
  return grid.map((_, i) => {
    const resistance = first.resistanceAt(loss, i, driveVoltageRms);
    first.fill(i, resistance, swept);
    const size = (name: string) => Math.hypot(swept[place(name)]!.re[i]!, swept[place(name)]!.im[i]!);
    const pressure = resistance * size('ventAirSpeed');
    return (3 * THIRD * pressure * third.perPressure(i, place('radiatedFlow'))) / size('radiatedFlow');
  });
}
