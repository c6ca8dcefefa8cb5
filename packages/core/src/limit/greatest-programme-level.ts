import type { System } from '../enclosure/index.js';
import { missingProbe } from '../network/index.js';
import {
  given,
  type Level,
  optional,
  readFields,
  si,
  type TemperatureDifference,
  type VoltageRms,
} from '../quantity/index.js';
import { type Bound, firstPassed, neverPassed } from './first-passed.js';
import { refuseBadLimits } from './greatest-level.js';
import type { Limit } from './limit.js';
import { type ProgrammeInput, programme } from './programme.js';
import { programmeColumns } from './programme-columns.js';
import { heatField, type ThermalModelInput, thermalModel } from './thermal-model.js';

/** How loud a programme may be played, and what gives out first. */
export interface GreatestProgrammeLevel {
  /** Rms level of the whole programme at 1 m in half space. */
  readonly levelHalfSpace: Level;
  /** Rms voltage of the whole programme. */
  readonly driveVoltageRms: VoltageRms;
  readonly binding: string;
  /** The drive that each limit alone would allow, by its name, V rms; the least of limits of one name, left out where no drive reaches it. */
  readonly drives: Readonly<Record<string, number>>;
  /** Rise of the coil above the air; 0 without a thermal model. */
  readonly coilRise: TemperatureDifference;
}

/**
 * The greatest level of a programme at which no limit is passed: an estimate. A limit on peaks takes the crest factor of the programme,
 * a limit on a mean over time, such as heat, takes the rms.
 *
 * $$ E_k = \frac{g_k}{\sqrt{\sum_j s_j |h_k(f_j)|^2}}\cdot\begin{cases}\sqrt2/c & \text{peaks}\\ 1 & \text{heat}\end{cases} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $E_k$ | `drives` | V | rms voltage of the programme that limit k allows |
 * | $g_k$ | `greatestRms` | SI | rms that limit k allows a sine |
 * | $h_k$ | `probe` | SI per V | value that one volt causes, with a hot coil where `heat` is given |
 * | $s_j, c$ | `programme` | 1 | shares of its spectrum, and its crest factor |
 *
 * @validity peaks of travel, speed and current that stand above their rms as those of the voltage do: a box that filters the programme
 *   changes its crest factor, for noise little, for single strokes of a drum much
 * @neglects the loss of the vent, which lets the cone move more and the air less; strokes and silences longer than the coil is slow
 * @returns the level, the drive, what binds, and what each limit would allow
 * @throws InputError those of `programme` and `greatestLevel`; `inconsistent` where no drive passes a limit
 * @source common practice
 * @example greatestProgrammeLevel(box, [...travelLimit(driver), ...heatLimit(driver)], { programme: pink }).levelHalfSpace
 */
export function greatestProgrammeLevel(
  system: System,
  limits: readonly Limit[],
  options: { readonly programme: ProgrammeInput; readonly heat?: ThermalModelInput },
): GreatestProgrammeLevel {
  const read = readFields('options', options, { programme: given<ProgrammeInput>(), heat: optional(heatField) });
  const played = programme(read.programme);
  const heat = read.heat && thermalModel(read.heat);
  refuseBadLimits(limits);
  const { probes, at, squareOfDrive, riseOfCold, level } = programmeColumns(system, played, {
    warms: heat !== undefined,
  });
  const used = limits.map(({ name, probe, integrated, averaged, greatestRms }) => {
    const place = probe === undefined ? -1 : probes.indexOf(probe);
    if (probe !== undefined && place < 0) throw missingProbe(probe);
    const per = greatestRms * (averaged ? 1 : Math.SQRT2 / played.crestFactor);
    return { name, perVolt: (rise: number) => (place < 0 ? 1 : at(rise).rms(place, integrated)) / per };
  });
  const result = (drive: number, binding: string, drives: Record<string, number>, rise: number) => ({
    levelHalfSpace: si('level', level(rise) + 20 * Math.log10(drive)),
    driveVoltageRms: si('voltageRms', drive),
    binding,
    drives,
    coilRise: si('temperatureDifference', heat ? rise / heat.coefficient : 0),
  });
  const cold = used.map(({ name, perVolt }) => [name, 1 / Math.max(perVolt(0), 1e-150)] as const);
  const reached = cold.filter(([, drive]) => drive < UNREACHED);
  if (reached.length === 0) throw neverPassed(used);
  const [least, drive] = reached.reduce((one, other) => (other[1] < one[1] ? other : one));
  if (heat === undefined) return result(drive, least, leastByName(reached), 0);
  // The rise of the resistance is what is searched: the drive follows from it, and grows with it.
  const driveAt = (rise: number) => Math.sqrt(squareOfDrive(rise, heat));
  const bounds = used.map(
    ({ name, perVolt }): Bound => ({
      name,
      excess: (rise) => (rise === 0 ? -1 : Math.min(driveAt(rise) * perVolt(rise), 1e150) - 1),
    }),
  );
  const { strength, binding } = firstPassed(bounds, riseOfCold(drive, heat));
  const alone = bounds.flatMap((bound, k) =>
    bound.excess(1e6) > 0
      ? [[bound.name, driveAt(firstPassed([bound], riseOfCold(cold[k]![1], heat)).strength)] as const]
      : [],
  );
  return result(driveAt(strength), bounds[binding]!.name, leastByName(alone), strength);
}

/** No amplifier gives as many volts. */
const UNREACHED = 1e100;

/** Limits of one name count as one, such as those of a quiet vent, whose air may move only so far and so fast. */
function leastByName(drives: readonly (readonly [string, number])[]): Record<string, number> {
  const least: Record<string, number> = {};
  for (const [name, drive] of drives) least[name] = Math.min(least[name] ?? Infinity, drive);
  return least;
}
