import type { DriverGroup } from '../driver/index.js';
import { given, notNegative, optional, type Resistance, type ResistanceInput } from '../quantity/index.js';
import type { Drivers } from './driver-parts.js';

/** What every box of like drivers has, as people write it. */
export interface DrivenInput {
  readonly drivers: Drivers;
  /** Resistance of the amplifier's output and the cable; default 0. */
  readonly sourceResistance?: ResistanceInput;
}

/** The same after reading, in SI units. */
export interface DrivenSpec {
  readonly drivers: DriverGroup;
  readonly sourceResistance: Resistance;
}

/** The readers of the fields of {@link DrivenInput}. */
export const drivenShape = { drivers: given<Drivers>(), sourceResistance: optional(notNegative('resistance')) };

/** Total quality factor at an angular frequency: of motor and suspension, source resistance included. */
export const totalQ = ({ drivers, sourceResistance }: DrivenSpec, w: number): number => {
  const { Mms, Rms, Bl, Re } = drivers.equivalent;
  return (w * Mms) / (Rms + Bl ** 2 / (sourceResistance + Re));
};

/** Compliance of the suspension over that of air of compliance `Cab`. */
export const complianceRatio = ({ drivers: { equivalent } }: DrivenSpec, Cab: number): number =>
  (equivalent.Sd ** 2 * equivalent.Cms) / Cab;
