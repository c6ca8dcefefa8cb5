import type { System } from '../enclosure/index.js';
import { refuse } from '../fault/index.js';
import {
  type FrequencyGrid,
  frequencyGrid,
  positive,
  readFields,
  si,
  type VoltageRms,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { compiledSystem, probeColumns, probeNamed } from '../response/index.js';

/**
 * Heat in a class-B output stage that plays a sine into any impedance: what the supply gives, less what the load takes.
 *
 * $$ P_D = \frac{2\sqrt2}{\pi}\,V_s I - P_L,\qquad P_L = \mathrm{Re}\,(U I^*) $$
 *
 * The phase does not alter what the supply gives. Into a resistance $P_D$ is greatest, $2V_s^2/\pi^2R$, at $2/\pi$ of the greatest
 * drive; into a reactance nothing is taken off, and it grows up to clipping.
 *
 * | symbol | argument | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V_s$ | `supply` | V | from ground to each of the two rails |
 * | $I$ | `currentRms` | A | current of the load, rms |
 * | $P_L$ | `delivered` | W | real power that the load takes |
 *
 * @validity a sine below clipping; two rails alike. Kernel, checks nothing
 * @neglects the current at rest, and what the stages before it take
 * @returns W, of both halves together
 * @source sedra2015 power dissipation of the class B output stage
 * @source benjamin1994 the same for loads with a phase
 * @example classBHeat(40, 3, 50) // 58 W
 */
export const classBHeat = (supply: number, currentRms: number, delivered: number): number =>
  ((2 * Math.SQRT2) / Math.PI) * supply * currentRms - delivered;

/** What an amplifier does with a system. Columns of equal length, W. */
export interface AmplifierHeat {
  readonly frequencies: FrequencyGrid;
  /** Heat in the output stage. */
  readonly heat: Float64Array;
  /** Power that goes out: into the drivers and the resistance in front of them. */
  readonly delivered: Float64Array;
}

/** How a supply and a drive are read. */
const shape = { supply: positive('voltageRms'), driveVoltageRms: positive('voltageRms') };

/** Refuses a drive whose peaks do not fit between the rails. */
function refuseClipped(supply: VoltageRms, drive: VoltageRms): void {
  const most = supply / Math.SQRT2;
  if (drive <= most * (1 + 1e-12)) return;
  const expected = `at most ${most} V rms from rails of ${supply} V`;
  const remedy = 'Lower the drive, or give a higher supply.';
  refuse([{ code: 'inconsistent', path: 'options.driveVoltageRms', got: drive, expected, remedy }]);
}

/**
 * Heat in a class-B amplifier that drives a system, from its real complex impedance. See {@link classBHeat} for the formula.
 *
 * @validity a steady sine below clipping, small signals
 * @neglects the current at rest; the loss of the vent and the heat of the coil, which raise the impedance
 * @returns columns in W
 * @throws InputError `inconsistent` for a drive that clips; `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source benjamin1994 output stages on loudspeaker loads
 * @example amplifierHeat(box, [30, 60], { supply: '40 V', driveVoltageRms: '20 V' }).heat
 */
export function amplifierHeat(
  system: System,
  frequencies: ArrayLike<number>,
  options: { readonly supply: VoltageRmsInput; readonly driveVoltageRms: VoltageRmsInput },
): AmplifierHeat {
  const { supply, driveVoltageRms: drive } = readFields('options', options, shape);
  refuseClipped(si('voltageRms', supply), drive);
  const grid = frequencyGrid(frequencies);
  const { re, im } = probeNamed(probeColumns(compiledSystem(system), grid), 'current');
  const delivered = re.map((conductance) => conductance * drive ** 2);
  const heat = delivered.map((power, i) => classBHeat(supply, drive * Math.hypot(re[i]!, im[i]!), power));
  return { frequencies: grid, heat, delivered };
}
