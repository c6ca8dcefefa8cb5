import type { DriverGroup } from '../driver/index.js';
import { InputError } from '../fault/index.js';
import { given, notNegative, optional, type Resistance, type ResistanceInput } from '../quantity/index.js';
import type { Drivers } from './driver-parts.js';

/** What every box with equal drivers has, as people write it. */
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

/**
 * Total quality factor of motor and suspension at an angular frequency, source resistance included.
 *
 * $$ Q_T = \frac{\omega M_{ms}}{R_{ms} + (Bl)^2 / (R_g + R_e)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\omega$ | `w` | rad/s | angular frequency |
 * | $R_g$ | `sourceResistance` | Ω | resistance in front of the terminals |
 * | $M_{ms}, R_{ms}, Bl, R_e$ | `drivers` | SI | of the driver that stands for all |
 *
 * @validity a spec that was read
 * @neglects the inductance of the coil, losses of the box
 * @returns the quality factor
 * @throws InputError `inconsistent` for what is no spec
 * @source small1972direct total driver Q
 * @example totalQ(closedBox({ drivers: driver, netVolume: '40 L' }).spec, 2 * Math.PI * 30)
 */
export const totalQ = (spec: DrivenSpec, w: number): number => {
  const { drivers, sourceResistance } = spec ?? {};
  if (!drivers?.equivalent) {
    const expected = 'a spec that was read';
    throw new InputError([
      { code: 'inconsistent', path: 'spec', got: spec, expected, remedy: 'Give that of a system.' },
    ]);
  }
  const { Mms, Rms, Bl, Re } = drivers.equivalent;
  return (w * Mms) / (Rms + Bl ** 2 / (sourceResistance + Re));
};

/** Compliance of the suspension over that of air of compliance `Cab`. */
export const complianceRatio = ({ drivers: { equivalent } }: DrivenSpec, Cab: number): number =>
  (equivalent.Sd ** 2 * equivalent.Cms) / Cab;
