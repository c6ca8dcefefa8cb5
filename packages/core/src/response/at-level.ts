import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { complexColumns } from '../numeric/index.js';
import {
  type FrequencyGrid,
  frequencyGrid,
  given,
  positive,
  readFields,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { probePlaces } from './compile.js';
import { refuseFallingLoss } from './falling-loss.js';
import { levelColumn } from './level.js';
import { lossesOf } from './losses-of-openings.js';
import { type LossByVent, lossyAtLevel } from './openings-at-level.js';

export interface AtLevelOptions {
  readonly driveVoltageRms: VoltageRmsInput;
  /** What the vent loses by the speed of its air, such as one of the three losses of `ventLoss`; of several vents, one each. */
  readonly loss: FlowLoss | LossByVent;
}

/** What one of several vents does. */
export interface OpeningAtLevel {
  readonly airSpeedPeak: Float64Array;
  readonly resistance: Float64Array;
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
  /** Peak of the mean air speed in the narrowest section of the vent, m/s; of several, where it is greatest. */
  readonly airSpeedPeak: Float64Array;
  /** What the loss amounts to as an acoustic resistance in the vent, Pa·s/m³; of several, in that of the greatest speed. */
  readonly ventResistance: Float64Array;
  /** Each of several unlike vents, by its name; left out where there is one. */
  readonly vents?: Readonly<Record<string, OpeningAtLevel>>;
  readonly currentRms: Float64Array;
  /** Magnitude of the impedance at the terminals, Ω. */
  readonly impedance: Float64Array;
}

const shape = { driveVoltageRms: positive('voltageRms'), loss: given<FlowLoss | LossByVent>() };

/** A system with a lossy vent, swept once for questions at any drive. */
export interface AtLevelKernel {
  /** A loss, or one for each of several vents, and one drive for all frequencies or one for each, V rms. */
  readonly at: (loss: FlowLoss | LossByVent, driveVoltageRms: number | Float64Array) => AtLevel;
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
  const { openings, probes, linear, settle } = lossyAtLevel(system, frequencies);
  const count = frequencies.length;
  const named = (name: string): number => probes.indexOf(name);
  const cones = probePlaces(probes, 'coneVelocity');
  const without = new Float64Array(count);
  levelColumn(frequencies, linear[named('radiatedFlow')]!, system.air.density, 1, without);
  const swept = complexColumns(probes.length, count);
  const size = (place: number, i: number) => Math.hypot(swept[place]!.re[i]!, swept[place]!.im[i]!);
  const resistances = new Float64Array(openings.length);
  const tried = new Set<FlowLoss>();
  const at = (loss: FlowLoss | LossByVent, drive: number | Float64Array): AtLevel => {
    const losses = lossesOf(loss, openings);
    for (const one of losses) {
      if (!tried.has(one)) refuseFallingLoss(one, frequencies, system.air);
      tried.add(one);
    }
    const driveVoltageRms = typeof drive === 'number' ? new Float64Array(count).fill(drive) : drive;
    const each = openings.map(() => ({ airSpeedPeak: new Float64Array(count), resistance: new Float64Array(count) }));
    const fastest = new Uint8Array(count);
    for (let i = 0; i < count; i++) {
      settle(losses, i, driveVoltageRms[i]!, swept, resistances);
      openings.forEach(({ probe, area }, k) => {
        each[k]!.airSpeedPeak[i] = Math.SQRT2 * driveVoltageRms[i]! * size(named(probe), i);
        each[k]!.resistance[i] = resistances[k]! / area;
        if (each[k]!.airSpeedPeak[i]! > each[fastest[i]!]!.airSpeedPeak[i]!) fastest[i] = k;
      });
    }
    const levelHalfSpace = new Float64Array(count);
    levelColumn(frequencies, swept[named('radiatedFlow')]!, system.air.density, 1, levelHalfSpace);
    const compression = levelHalfSpace.map((level, i) => without[i]! - level);
    for (let i = 0; i < count; i++) levelHalfSpace[i]! += 20 * Math.log10(driveVoltageRms[i]!);
    const column = (of: (i: number) => number) => Float64Array.from(frequencies, (_, i) => of(i));
    const current = column((i) => size(named('current'), i));
    const travel = (i: number) => Math.max(...cones.map((place) => size(place, i))) / (2 * Math.PI * frequencies[i]!);
    return {
      frequencies,
      driveVoltageRms,
      levelHalfSpace,
      compression,
      displacementPeak: column((i) => Math.SQRT2 * driveVoltageRms[i]! * travel(i)),
      airSpeedPeak: column((i) => each[fastest[i]!]!.airSpeedPeak[i]!),
      ventResistance: column((i) => each[fastest[i]!]!.resistance[i]!),
      ...(openings.length > 1 && {
        vents: Object.fromEntries(openings.map(({ name }, k) => [name, each[k] as OpeningAtLevel])),
      }),
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
 * Unlike vents of one box, as those of a band-pass box, are solved together: each has its own speed and loss, and moves the others' air.
 * There is always one such state, and only one, since the rest of the system takes power and gives none, and a loss whose pressure falls
 * where the speed rises is refused: it would have several. It is tried at steps of 7.5 % of the speed up to 32 m/s; a narrower fall is not seen. The states of a nonlinear driver are
 * those of `branchesAtLevel`.
 *
 * @validity a linear driver at steady sines; where the loss is quadratic and all that limits the flow, the
 *   speed is 2.5 % too low
 * @neglects harmonics that the loss makes; compression by the driver: its travel and the heat of its coil
 * @returns one column each
 * @throws InputError those of `respond`; `inconsistent` for a system without a vent of a stated area, and for a loss that gives energy
 *   or whose pressure falls;
 *   `empty` and `unknown-field` where several vents have not a loss each
 * @source ingard1967 quasi-steady loss of its fundamental; the rest is the linear network
 * @example respondAtLevel(box, [25, 30], { driveVoltageRms: '20 V', loss: ventLoss({ vent }).nominal }).compression
 */
export function respondAtLevel(system: System, frequencies: ArrayLike<number>, options: AtLevelOptions): AtLevel {
  const { driveVoltageRms, loss } = readFields('options', options, shape);
  return compileAtLevel(system, frequencyGrid(frequencies)).at(loss, driveVoltageRms);
}
