import { flowLossField } from '../duct/flow-loss.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { complexColumns } from '../numeric/index.js';
import { type FrequencyGrid, frequencyGrid, positive, readFields, type VoltageRmsInput } from '../quantity/index.js';
import { probePlaces } from './compile.js';
import { levelColumn } from './level.js';
import { ventAtLevel } from './vent-at-level.js';

export interface AtLevelOptions {
  readonly driveVoltageRms: VoltageRmsInput;
  /** What the vent loses by the speed of its air, such as one of the three losses of `ventLoss`. */
  readonly loss: FlowLoss;
}

/** What a system with a lossy vent does at one drive. Columns of equal length, SI units; levels in dB. */
export interface AtLevel {
  readonly frequencies: FrequencyGrid;
  readonly driveVoltageRms: Float64Array;
  /** Level of the fundamental at 1 m in half space, re 20 µPa rms. */
  readonly levelHalfSpace: Float64Array;
  /** How much lower that is than without the loss, dB. It is negative where the loss stops sound of the vent that cancels. */
  readonly compression: Float64Array;
  /** Peak travel of the cone that moves most, m. */
  readonly displacementPeak: Float64Array;
  /** Peak of the mean air speed in the narrowest section of the vent, m/s. */
  readonly airSpeedPeak: Float64Array;
  /** What the loss amounts to as an acoustic resistance in the vent, Pa·s/m³. */
  readonly ventResistance: Float64Array;
  readonly currentRms: Float64Array;
  /** Magnitude of the impedance at the terminals, Ω. */
  readonly impedance: Float64Array;
}

/** How the drive and the loss are read. */
export const atLevelShape = { driveVoltageRms: positive('voltageRms'), loss: flowLossField };

/** A system with a lossy vent, swept once for questions at any drive. */
export interface AtLevelKernel {
  /** A loss, and one drive for all frequencies or one for each, V rms. */
  readonly at: (loss: FlowLoss, driveVoltageRms: number | Float64Array) => AtLevel;
}

/**
 * Prepares {@link respondAtLevel} at some frequencies for many drives and losses: the network is swept twice, each drive only
 * solves for the speed of the air.
 *
 * @validity as {@link respondAtLevel}
 * @throws InputError those of {@link respondAtLevel}
 * @source own (allocation around the solution)
 * @example compileAtLevel(box, grid).at(loss, 20).compression
 */
export function compileAtLevel(system: System, frequencies: FrequencyGrid): AtLevelKernel {
  const { probes, linear, resistanceAt, fill, area } = ventAtLevel(system, frequencies);
  const count = frequencies.length;
  const named = (name: string): number => probes.indexOf(name);
  const cones = probePlaces(probes, 'coneVelocity');
  const without = new Float64Array(count);
  levelColumn(frequencies, linear[named('radiatedFlow')]!, system.air.density, 1, without);
  const swept = complexColumns(probes.length, count);
  const at = (loss: FlowLoss, drive: number | Float64Array): AtLevel => {
    const driveVoltageRms = typeof drive === 'number' ? new Float64Array(count).fill(drive) : drive;
    const ventResistance = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      const resistance = resistanceAt(loss, i, driveVoltageRms[i]!);
      fill(i, resistance, swept);
      ventResistance[i] = resistance / area;
    }
    const levelHalfSpace = new Float64Array(count);
    levelColumn(frequencies, swept[named('radiatedFlow')]!, system.air.density, 1, levelHalfSpace);
    const compression = levelHalfSpace.map((level, i) => without[i]! - level);
    for (let i = 0; i < count; i++) levelHalfSpace[i]! += 20 * Math.log10(driveVoltageRms[i]!);
    const size = (place: number, i: number) => Math.hypot(swept[place]!.re[i]!, swept[place]!.im[i]!);
    const column = (of: (i: number) => number) => Float64Array.from(frequencies, (_, i) => of(i));
    const current = column((i) => size(named('current'), i));
    const travel = (i: number) => Math.max(...cones.map((place) => size(place, i))) / (2 * Math.PI * frequencies[i]!);
    return {
      frequencies,
      driveVoltageRms,
      levelHalfSpace,
      compression,
      displacementPeak: column((i) => Math.SQRT2 * driveVoltageRms[i]! * travel(i)),
      airSpeedPeak: column((i) => Math.SQRT2 * driveVoltageRms[i]! * size(named('ventAirSpeed'), i)),
      ventResistance,
      currentRms: column((i) => current[i]! * driveVoltageRms[i]!),
      impedance: column((i) => size(named('terminalVoltage'), i) / current[i]!),
    };
  };
  return { at };
}

/**
 * What a system does at a drive at which its vent loses: level and how much it falls behind, travel, air speed, current, impedance.
 * The loss acts as a resistance that grows with the speed, and the speed is the one at which both agree.
 *
 * $$ \hat u = \frac{\hat u_0}{|1 + r(\hat u)\,S Y|},\qquad \text{compression} = L_{linear} - L $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\hat u_0$ | | m/s | speed without the loss |
 * | $\hat u$ | `airSpeedPeak` | m/s | speed with it |
 * | $r$ | `loss` | Pa·s/m | specific resistance at the fundamental |
 * | $Y$ | | m³/(Pa·s) | admittance that the vent sees in series with itself |
 *
 * @validity a linear driver at steady sines, one vent or several alike; where the loss is quadratic and all that limits the flow, the
 *   speed is 2.5 % too low
 * @neglects harmonics that the loss makes; compression by the driver: its travel and the heat of its coil
 * @returns one column each
 * @throws InputError those of `respond`; `inconsistent` for a system without one vent of a stated area
 * @source ingard1967 quasi-steady loss of its fundamental; the rest is the linear network
 * @example respondAtLevel(box, [25, 30], { driveVoltageRms: '20 V', loss: ventLoss({ vent }).nominal }).compression
 */
export function respondAtLevel(system: System, frequencies: ArrayLike<number>, options: AtLevelOptions): AtLevel {
  const { driveVoltageRms, loss } = readFields('options', options, atLevelShape);
  return compileAtLevel(system, frequencyGrid(frequencies)).at(loss, driveVoltageRms);
}
