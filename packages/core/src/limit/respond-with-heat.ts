import { flowLossField } from '../duct/flow-loss.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import type { Warning } from '../fault/index.js';
import {
  type FrequencyGrid,
  frequencyGrid,
  optional,
  positive,
  readFields,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { probePlaces } from '../response/compile.js';
import { levelColumn } from '../response/index.js';
import { levelOfFlow, REFERENCE_PRESSURE } from '../response/level.js';
import { operatingPoints } from './operating-point.js';
import { heatField, riseWarnings, type ThermalModelInput, thermalModel } from './thermal-model.js';

export interface WithHeatOptions {
  readonly driveVoltageRms: VoltageRmsInput;
  /** How the coil of each driver warms up. */
  readonly heat: ThermalModelInput;
  /** What the vent loses by its speed; default nothing. */
  readonly loss?: FlowLoss;
}

/** What a system does once its coil has settled at one temperature for each frequency. Columns of equal length. */
export interface WithHeat {
  readonly frequencies: FrequencyGrid;
  /** Level at 1 m in half space, dB. */
  readonly levelHalfSpace: Float64Array;
  /** How much lower that is than with a cold coil and without the loss of the vent, dB. */
  readonly compression: Float64Array;
  /** Rise of the coil above the air, K. */
  readonly coilRise: Float64Array;
  /** Rise of magnet and frame above the air, K. */
  readonly magnetRise: Float64Array;
  /** Hot resistance of the coil over the cold one. */
  readonly resistanceRatio: Float64Array;
  /** Heat in each coil, W. */
  readonly power: Float64Array;
  readonly currentRms: Float64Array;
  /** Peak travel of the cone that moves most, m. */
  readonly displacementPeak: Float64Array;
  /** `outside-validity` where the hottest coil is beyond what the model can tell. */
  readonly warnings: readonly Warning[];
}

const shape = { driveVoltageRms: positive('voltageRms'), heat: heatField, loss: optional(flowLossField) };

/**
 * What a system does with a hot coil: each frequency is played alone until temperatures have settled. The coil warms up by its heat,
 * its resistance rises, the current falls, and the temperature is the one at which all agree. There is only one.
 *
 * $$ \theta_v = (R_v + R_m)\,\frac{I^2 R}{n},\qquad R = R_e\,(1 + \alpha\,\theta_v),\qquad
 *    I = \frac{I_0}{|1 + (R - R_e)\,Y|} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\theta_v$ | `coilRise` | K | rise of the coil above the air |
 * | $I_0, I$ | `currentRms` | A | current in the coil when cold and when hot |
 * | $R/R_e$ | `resistanceRatio` | 1 | rise of the resistance |
 * | $I^2R/n$ | `power` | W | heat in each of n coils |
 * | $Y$ | | S | admittance that the coil sees in series with itself |
 *
 * @validity one driver, or several alike that share the power; steady sines of minutes. A coil may burn at a rise of 150 K and more;
 *   beyond 250 K the model ends: the result says so in `warnings`, and tells by how much the drive is too much
 * @neglects what `thermalModel` neglects; the slower fall of magnet and suspension with heat
 * @returns one column each, with warnings
 * @throws InputError those of `respond` and `thermalModel`; `inconsistent` for a system with several kinds of drivers
 * @source button1992 power compression by the rise of Re; own (the root of it in any network)
 * @example respondWithHeat(box, [30, 100], { driveVoltageRms: '20 V', heat: model }).compression
 */
export function respondWithHeat(system: System, frequencies: ArrayLike<number>, options: WithHeatOptions): WithHeat {
  const { driveVoltageRms, heat, loss } = readFields('options', options, shape);
  const model = thermalModel(heat);
  const grid = frequencyGrid(frequencies);
  const points = operatingPoints(system, grid, { heat: model, ...(loss && { loss }) });
  const { probes, linear, count, Re } = points;
  const [flow, current] = [probes.indexOf('radiatedFlow'), probes.indexOf('coilCurrent')];
  const cones = probePlaces(probes, 'coneVelocity');
  const column = () => new Float64Array(grid.length);
  const [levelHalfSpace, compression, coilRise, magnetRise] = [column(), column(), column(), column()];
  const [resistanceRatio, power, currentRms, displacementPeak] = [column(), column(), column(), column()];
  levelColumn(grid, linear[flow]!, system.air.density, driveVoltageRms, compression);
  const unit = (system.air.density * driveVoltageRms) / REFERENCE_PRESSURE;
  grid.forEach((frequency, i) => {
    const point = points.driven(i, driveVoltageRms);
    const size = (place: number) => Math.hypot(...point.probe(place));
    levelHalfSpace[i] = levelOfFlow(size(flow) * frequency, unit);
    compression[i]! -= levelHalfSpace[i]!;
    currentRms[i] = driveVoltageRms * size(current);
    resistanceRatio[i] = 1 + point.rise;
    power[i] = (currentRms[i]! ** 2 * Re * (1 + point.rise)) / count;
    coilRise[i] = (model.coilToMagnet + model.magnetToAir) * power[i]!;
    magnetRise[i] = model.magnetToAir * power[i]!;
    displacementPeak[i] = (Math.SQRT2 * driveVoltageRms * Math.max(...cones.map(size))) / (2 * Math.PI * frequency);
  });
  return {
    frequencies: grid,
    levelHalfSpace,
    compression,
    coilRise,
    magnetRise,
    resistanceRatio,
    power,
    currentRms,
    displacementPeak,
    warnings: riseWarnings(coilRise.reduce((most, rise) => Math.max(most, rise), 0)),
  };
}
