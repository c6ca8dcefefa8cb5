import { type Air, readAir, standardAir } from '../air/index.js';
import { type Frequency, si } from '../quantity/index.js';
import { boxCompliance } from './box-air.js';
import { type ClosedBoxInput, type ClosedBoxSpec, closedAngularFrequency, closedFamily } from './closed-box.js';
import { complianceRatio, totalQ } from './driven.js';

/** Where a driver resonates in a closed box, and how sharply. */
export interface ClosedResonance {
  /** Resonance of the cone on its suspension and on the air. */
  readonly fc: Frequency;
  /** Quality factor at fc of the motor and the suspension, source resistance included. */
  readonly Qtc: number;
  /** Compliance of the suspension over that of the air; without filling, Vas over the volume. */
  readonly alpha: number;
}

/**
 * Resonance, quality factor and compliance ratio of a driver in a closed box.
 *
 * $$ \alpha = \frac{S_d^2 C_{ms}}{C_{ab}}, \quad f_c = \frac{1}{2\pi}\sqrt{\frac{1 + \alpha}{M_{ms} C_{ms}}}, \quad
 *    Q_{tc} = \frac{2\pi f_c M_{ms}}{R_{ms} + (Bl)^2 / (R_g + R_e)}, \quad C_{ab} = g\,\frac{V}{\rho c^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air in the box |
 * | $g$ | `fillGain` | 1 | gain by filling, 1 without |
 * | $R_g$ | `sourceResistance` | Ω | resistance in front of the terminals |
 * | $S_d, M_{ms}, C_{ms}, R_{ms}, Bl, R_e$ | `drivers` | SI | of the driver, or of the one that stands for all |
 *
 * @validity frequencies at which the box is small against the wavelength
 * @neglects the losses of the box (QL, QA), the inductance of the coil, flexing walls
 * @returns the three in SI units
 * @throws InputError those of `closedBox`
 * @source small1972closed1 system compliance ratio, fc and Qtc
 * @example closedResonance({ drivers: driver, netVolume: '40 L' }).fc
 */
export function closedResonance(input: ClosedBoxInput | ClosedBoxSpec, air: Air = standardAir): ClosedResonance {
  readAir(air);
  const spec = closedFamily.read(input);
  const Cab = boxCompliance(spec.netVolume, spec.fillGain, air);
  const wc = closedAngularFrequency(spec.drivers.equivalent, Cab);
  return { fc: si('frequency', wc / (2 * Math.PI)), Qtc: totalQ(spec, wc), alpha: complianceRatio(spec, Cab) };
}
