import { type Fault, refuse } from '../fault/index.js';
import { type FrequencyInput, positive, type ResistanceInput, readFields } from '../quantity/index.js';
import { ventedImpedance } from './vented-impedance.js';

/** Three frequencies of the impedance of a vented box, and three readings in ohms. */
export interface VentedImpedanceQualityInput {
  /** The lower of the two peaks, the dip between them, and the upper one. */
  readonly lowerPeak: FrequencyInput;
  readonly dip: FrequencyInput;
  readonly upperPeak: FrequencyInput;
  /** Magnitude at the higher of the two peaks: losses of the box lower it less. */
  readonly peakImpedance: ResistanceInput;
  /** A further reading on the side of a peak, best about halfway down. */
  readonly flankFrequency: FrequencyInput;
  readonly flankImpedance: ResistanceInput;
  /** Resistance for direct current, at the same terminals. */
  readonly Re: ResistanceInput;
}

/** The quality factors of the drivers at their resonance. */
export interface VentedImpedanceQuality {
  readonly Qes: number;
  readonly Qms: number;
  readonly Qts: number;
}

/** What is read of the curve. */
export const readingsShape = {
  lowerPeak: positive('frequency'),
  dip: positive('frequency'),
  upperPeak: positive('frequency'),
  peakImpedance: positive('resistance'),
  flankFrequency: positive('frequency'),
  flankImpedance: positive('resistance'),
  Re: positive('resistance'),
};

/**
 * Quality factors of the drivers in a vented box, from its impedance: the height of a peak tells the loss of the suspension, and
 * one reading on the side of a peak tells the motor.
 *
 * $$ G = \frac{1}{|Z_p| - R_e},\quad B = \sqrt{\frac{2 R_e G + 1}{|Z_f|^2 - R_e^2} - G^2},\quad
 *    b(\omega) = \frac{\omega}{\omega_s} - \frac{\omega_s}{\omega} - \frac{\alpha\,\omega_s/\omega_b}{\omega/\omega_b - \omega_b/\omega} $$
 * $$ Q_{es} = \frac{B R_e}{|b(\omega_f)|},\quad Q_{ms} = \frac{Q_{es}}{R_e G},\quad Q_{ts} = \frac{Q_{es}Q_{ms}}{Q_{es}+Q_{ms}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $Z_p$ | `peakImpedance` | Ω | at the higher peak |
 * | $\omega_f, Z_f$ | `flankFrequency`, `flankImpedance` | rad/s, Ω | the reading on the side of a peak |
 * | $\omega_s, \omega_b, \alpha$ | | rad/s, 1 | resonance, tuning and compliance ratio, by `ventedImpedance` |
 * | $G, B$ | | S | conductance and susceptance of the motion, seen from the terminals |
 *
 * @validity losses of the box small against those of the suspension; readings where the inductance of the coil does not count
 * @neglects losses of the box, which make Qms too small; the inductance of the coil
 * @returns ratios
 * @throws InputError `unit`, `not-finite`, `not-positive`, `inconsistent` where the readings do not lie between Re and the peak
 * @source small1973vented1 network of the driver in a vented box, its losses left out
 * @example ventedImpedanceQuality({ lowerPeak: '18 Hz', dip: '27 Hz', upperPeak: '45 Hz', peakImpedance: '60 Ω', flankFrequency: '52 Hz', flankImpedance: '25 Ω', Re: '6 Ω' }).Qes // 0.476
 */
export function ventedImpedanceQuality(input: VentedImpedanceQualityInput): VentedImpedanceQuality {
  const { peakImpedance, flankFrequency, flankImpedance, Re, ...near } = readFields('impedance', input, readingsShape);
  const faults: Fault[] = [];
  const told = (path: string, got: number, expected: string) =>
    faults.push({ code: 'inconsistent', path: `impedance.${path}`, got, expected, remedy: 'Read it again.' });
  if (!(peakImpedance > Re)) told('peakImpedance', peakImpedance, `more than Re, ${Re} Ω`);
  if (!(flankImpedance > Re && flankImpedance < peakImpedance)) {
    told('flankImpedance', flankImpedance, `between Re, ${Re} Ω, and the peak, ${peakImpedance} Ω`);
  }
  if (flankFrequency === near.dip) told('flankFrequency', flankFrequency, 'a frequency beside a peak, not the dip');
  const { fs, alpha } = ventedImpedance(near);
  refuse(faults);
  const G = 1 / (peakImpedance - Re);
  const B = Math.sqrt((2 * Re * G + 1) / (flankImpedance ** 2 - Re ** 2) - G ** 2);
  const x = flankFrequency / near.dip - near.dip / flankFrequency;
  const b = flankFrequency / fs - fs / flankFrequency - (alpha * fs) / near.dip / x;
  const Qes = (B * Re) / Math.abs(b);
  const Qms = Qes / (Re * G);
  return { Qes, Qms, Qts: (Qes * Qms) / (Qes + Qms) };
}
