import { type Air, readAir, standardAir } from '../air/index.js';
import { boxCompliance } from './box-air.js';
import { complianceRatio, totalQ } from './driven.js';
import { type VentedBoxInput, type VentedBoxSpec, ventedFamily } from './vented-box.js';

/** The three numbers that, together with the losses, determine the shape of the response of a vented box. */
export interface VentedRatios {
  /** Compliance of the suspension over that of the air: Vas in the working air over the net volume. */
  readonly alpha: number;
  /** Tuning over the resonance of the driver. */
  readonly h: number;
  /** Quality factor at fs of the motor and the suspension, source resistance included. It is Qts where there is none. */
  readonly QT: number;
}

/**
 * Compliance ratio, tuning ratio and total quality factor of a vented box, by which alignments are stated.
 *
 * $$ \alpha = \frac{S_d^2 C_{ms}}{C_{ab}}, \quad h = \frac{f_b}{f_s}, \quad
 *    Q_T = \frac{2\pi f_s M_{ms}}{R_{ms} + (Bl)^2 / (R_g + R_e)}, \quad
 *    C_{ab} = \frac{V}{\rho c^2}, \quad f_s = \frac{1}{2\pi\sqrt{M_{ms} C_{ms}}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air in the box |
 * | $f_b$ | `fb` | Hz | tuning |
 * | $R_g$ | `sourceResistance` | Ω | resistance in front of the terminals |
 * | $S_d, M_{ms}, C_{ms}, R_{ms}, Bl, R_e$ | `drivers` | SI | of the driver, or of the one that stands for all |
 *
 * @validity frequencies at which box and vent are small compared with the wavelength
 * @neglects the losses of the box (QL, QA, QP), the inductance of the coil, flexing walls
 * @returns the three ratios
 * @throws InputError those of `ventedBox`
 * @source small1973vented1 system compliance ratio, tuning ratio and total driver Q
 * @example ventedRatios({ drivers: driver, netVolume: '45 L', fb: '29 Hz' }).h
 */
export function ventedRatios(input: VentedBoxInput | VentedBoxSpec, air: Air = standardAir): VentedRatios {
  readAir(air);
  const spec = ventedFamily.read(input);
  const { Mms, Cms } = spec.drivers.equivalent;
  const ws = 1 / Math.sqrt(Mms * Cms);
  return {
    alpha: complianceRatio(spec, boxCompliance(spec.netVolume, 1, air)),
    h: (2 * Math.PI * spec.fb) / ws,
    QT: totalQ(spec, ws),
  };
}
