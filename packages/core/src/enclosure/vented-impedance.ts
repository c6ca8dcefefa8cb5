import { type Air, readAir, standardAir } from '../air/index.js';
import { type Fault, refuse } from '../fault/index.js';
import {
  type Compliance,
  type ConeAreaInput,
  type Frequency,
  type FrequencyInput,
  type Mass,
  optional,
  positive,
  readFields,
  si,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { boxCompliance } from './box-air.js';

/** What the impedance of a vented box shows near its tuning. */
export interface VentedImpedanceInput {
  /** The lower of the two peaks. */
  readonly lowerPeak: FrequencyInput;
  /** The dip between them. */
  readonly dip: FrequencyInput;
  readonly upperPeak: FrequencyInput;
  /** Air in the box; without it no volume and no mass follows. */
  readonly netVolume?: VolumeInput;
  /** Area of all cones that face outwards. The mass follows only with it. */
  readonly coneArea?: ConeAreaInput;
}

/** What follows about the drivers in the box. Quality factors, force factor and limits remain unknown. */
export interface VentedImpedance {
  readonly fb: Frequency;
  /** Resonance of the drivers, with the air load that they have in this box. */
  readonly fs: Frequency;
  /** Tuning over resonance. */
  readonly h: number;
  /** Compliance of the drivers over that of the air. */
  readonly alpha: number;
  /** The one peak that remains when the vent is blocked: a check without further tools. */
  readonly ventBlocked: Frequency;
  /** Of all drivers together, in the working air. */
  readonly Vas?: Volume;
  readonly Cms?: Compliance;
  readonly Mms?: Mass;
}

const shape = {
  lowerPeak: positive('frequency'),
  dip: positive('frequency'),
  upperPeak: positive('frequency'),
  netVolume: optional(positive('volume')),
  coneArea: optional(positive('coneArea')),
};

/**
 * Resonance and compliance of the drivers in a vented box, from the two peaks of its impedance and the dip between them.
 *
 * $$ f_b = f_M, \quad f_s = \frac{f_L f_H}{f_b}, \quad
 *    \alpha = \frac{(f_H^2 - f_b^2)(f_b^2 - f_L^2)}{f_H^2 f_L^2}, \quad V_{as} = \alpha V, \quad
 *    f_C = \sqrt{f_L^2 + f_H^2 - f_b^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_L, f_M, f_H$ | `lowerPeak`, `dip`, `upperPeak` | Hz | peaks of the impedance and the dip between them |
 * | $V$ | `netVolume` | m³ | air in the box |
 * | $f_C$ | `ventBlocked` | Hz | the peak with the vent blocked |
 * | $C_{ms}, M_{ms}$ | `Cms`, `Mms` | m/N, kg | $C_{ms} = \alpha C_{ab}/S_d^2$, and $M_{ms}$ from it and $f_s$ |
 *
 * @validity losses so small that they do not shift the peaks and the dip; one kind of driver; no lossy coil
 * @neglects the losses of the box and the inductance of the coil, which move the dip by a per cent or so
 * @returns what follows; nothing follows of quality factors, force factor, travel and heat
 * @throws InputError `unit`, `not-finite`, `not-positive`, `inconsistent` where the dip is not between the peaks
 * @source small1973vented4 measurement of a system: fsB = fL fH/fB, alpha, fB² = fL² + fH² − fC²
 * @example ventedImpedance({ lowerPeak: '18 Hz', dip: '27 Hz', upperPeak: '45 Hz' }).fs // 30
 */
export function ventedImpedance(input: VentedImpedanceInput, air: Air = standardAir): VentedImpedance {
  readAir(air);
  const { lowerPeak, dip, upperPeak, netVolume, coneArea } = readFields('impedance', input, shape);
  const faults: Fault[] = [];
  if (!(lowerPeak < dip && dip < upperPeak)) {
    const expected = `a frequency between the peaks, ${lowerPeak} and ${upperPeak} Hz`;
    faults.push({
      code: 'inconsistent',
      path: 'impedance.dip',
      got: dip,
      expected,
      remedy: 'Check the three readings.',
    });
  }
  refuse(faults);
  const [L, B, H] = [lowerPeak ** 2, dip ** 2, upperPeak ** 2];
  const fs = (lowerPeak * upperPeak) / dip;
  const alpha = ((H - B) * (B - L)) / (H * L);
  const Cms =
    netVolume !== undefined && coneArea !== undefined
      ? (alpha * boxCompliance(netVolume, 1, air)) / coneArea ** 2
      : undefined;
  return {
    fb: dip,
    fs: si('frequency', fs),
    h: dip / fs,
    alpha,
    ventBlocked: si('frequency', Math.sqrt(L + H - B)),
    ...(netVolume !== undefined && { Vas: si('volume', alpha * netVolume) }),
    ...(Cms !== undefined && {
      Cms: si('compliance', Cms),
      Mms: si('mass', 1 / ((2 * Math.PI * fs) ** 2 * Cms)),
    }),
  };
}
