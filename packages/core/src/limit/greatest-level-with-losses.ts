import { flowLossField } from '../duct/flow-loss.js';
import type { FlowLoss } from '../duct/index.js';
import type { System } from '../enclosure/index.js';
import { type Fault, refuse } from '../fault/index.js';
import {
  frequencyGrid,
  type LevelInput,
  nested,
  optional,
  type PowerInput,
  positive,
  readFields,
  si,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { levelOfFlow, REFERENCE_PRESSURE } from '../response/level.js';
import { boundsOf } from './bounds-with-losses.js';
import { firstPassed } from './first-passed.js';
import { type GreatestLevel, leastOf, refuseBadLimits } from './greatest-level.js';
import { type Limit, voltageLimit } from './limit.js';
import { operatingPoints } from './operating-point.js';
import { heatField, type ThermalModelInput, thermalModel } from './thermal-model.js';

/** What a system loses when it is played loud, and limits that only then have a meaning. */
export interface WithLossesOptions {
  /** What the vent loses by its speed; default nothing. */
  readonly loss?: FlowLoss;
  /** How the coil of each driver warms up; default not at all. */
  readonly heat?: ThermalModelInput;
  /** Greatest compression by the vent, dB. It needs a loss. */
  readonly ventCompression?: LevelInput;
  /** A class-B amplifier: the voltage from ground to each rail, and the greatest heat of its output stage. */
  readonly amplifier?: { readonly supply: VoltageRmsInput; readonly heat: PowerInput };
}

const shape = {
  loss: optional(flowLossField),
  heat: optional(heatField),
  ventCompression: optional(positive('level')),
  amplifier: optional(nested({ supply: positive('voltageRms'), heat: positive('power') })),
};

/** The greatest level with losses, and how much of it they cost. */
export interface GreatestLevelWithLosses extends GreatestLevel {
  /** How much lower the level is than the same drive would make it without losses, dB. */
  readonly compression: Float64Array;
  /** Rise of the coil above the air after many minutes at that drive, K; 0 without a thermal model. */
  readonly coilRise: Float64Array;
}

/**
 * The greatest level of a steady sine that stays within every limit, at each frequency, and the limit that binds there, with the loss
 * of the vent, the heat of the coil, and a class-B amplifier where they are given.
 *
 * $$ e_{max}(f) = \min_k\,\lbrace e : |X_k(f, e)| = g_k \rbrace $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $X_k$ | `probe` | SI | what limit k limits, at a drive e and with its losses |
 * | $g_k$ | `greatestRms` | SI | greatest value that limit k allows |
 *
 * Further limits: `amplifier voltage` and `amplifier heat` where `amplifier` is given, `vent compression` where `ventCompression` is.
 * Compression is counted from the level that a small drive promises, with a cold coil. Compression and heat of the amplifier may fall
 * again at a higher drive: the least drive at which they are reached counts.
 *
 * @validity as `respondWithHeat` and `respondAtLevel`; a compression, or a heat of the amplifier, that is passed by less than 0.3 % and
 *   only within a tenth of the drive can be missed
 * @neglects what those neglect; any signal but a steady sine
 * @returns one column each, and where it is least
 * @throws InputError those of `greatestLevel`, `respondWithHeat` and `respondAtLevel`; `conflict` for a compression without a loss;
 *   `inconsistent` where no drive passes a limit
 * @source small1973vented2 displacement-limited and thermally limited power; own (the roots with losses)
 * @example greatestLevelWithLosses(box, travelLimit(driver), [30], { loss, heat: model, ventCompression: '1 dB' }).binding
 */
export function greatestLevelWithLosses(
  system: System,
  limits: readonly Limit[],
  frequencies: ArrayLike<number>,
  options: WithLossesOptions = {},
): GreatestLevelWithLosses {
  const read = readFields('options', options, shape);
  const { loss, amplifier, ventCompression } = read;
  const grid = frequencyGrid(frequencies);
  const clipping = amplifier ? [voltageLimit(si('voltageRms', amplifier.supply / Math.SQRT2))] : [];
  const all = [...limits, ...clipping];
  refuseBadLimits(all);
  if (ventCompression !== undefined && loss === undefined) refuse([withoutLoss(ventCompression)]);
  const heat = read.heat && thermalModel(read.heat);
  const points = operatingPoints(system, grid, { ...(loss && { loss }), ...(heat && { heat }) });
  const { linear, probes } = points;
  const bounds = boundsOf(points, grid, all, { ventCompression, amplifier });
  const flow = probes.indexOf('radiatedFlow');
  const column = () => new Float64Array(grid.length);
  const [levelHalfSpace, driveVoltageRms, compression, coilRise] = [column(), column(), column(), column()];
  const binding = Array.from(grid, (frequency, i) => {
    const { list, start } = bounds(i);
    const { strength, binding: place } = firstPassed(list, start);
    const { drive, probe, rise } = points.at(i, strength);
    const unit = (system.air.density * drive) / REFERENCE_PRESSURE;
    const level = (re: number, im: number) => levelOfFlow(Math.hypot(re, im) * frequency, unit);
    levelHalfSpace[i] = level(...probe(flow));
    compression[i] = level(linear[flow]!.re[i]!, linear[flow]!.im[i]!) - levelHalfSpace[i]!;
    driveVoltageRms[i] = drive;
    if (heat) coilRise[i] = rise / heat.coefficient;
    return list[place]!.name;
  });
  const columns = { frequencies: grid, levelHalfSpace, driveVoltageRms, binding };
  return { ...columns, compression, coilRise, least: leastOf(columns) };
}

const withoutLoss = (got: number): Fault => {
  const remedy = 'Give the loss too, such as ventLoss({ vent }).nominal.';
  return { code: 'conflict', path: 'options.ventCompression', got, expected: 'a vent that loses', remedy };
};
