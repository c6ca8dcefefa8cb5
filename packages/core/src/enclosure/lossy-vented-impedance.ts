import { type Fault, type Impossible, impossible, refuse } from '../fault/index.js';
import { newtonRoot } from '../numeric/index.js';
import { type Frequency, optional, positive, type RatioInput, readFields, si } from '../quantity/index.js';
import { ventedImpedance } from './vented-impedance.js';
import { impedanceAt } from './vented-impedance-curve.js';
import { readingsShape, type VentedImpedanceQualityInput, ventedImpedanceQuality } from './vented-impedance-quality.js';

/** Readings of the impedance of a vented box, and what is known of its losses. Leave out a loss that is not there. */
export interface LossyVentedImpedanceInput extends VentedImpedanceQualityInput {
  /** Of the leaks, at the tuning. */
  readonly QL?: RatioInput;
  /** In its place: the quality factor of the suspension, where that is known. What is lost besides is the leaks. */
  readonly Qms?: RatioInput;
  readonly QA?: RatioInput;
  readonly QP?: RatioInput;
}

/** The drivers and the box that have this impedance. */
export interface LossyVentedImpedance {
  readonly ok: true;
  readonly fb: Frequency;
  readonly fs: Frequency;
  /** Compliance of the drivers over that of the air. */
  readonly alpha: number;
  readonly Qes: number;
  /** Below zero where the box alone would lose more than was measured. */
  readonly Qms: number;
  readonly Qts: number;
  /** Of the leaks; infinite without any, and below zero where the other losses are more than was measured. */
  readonly QL: number;
}

const ratio = optional(positive('ratio'));
const shape = {
  ...readingsShape,
  QL: ratio,
  Qms: ratio,
  QA: ratio,
  QP: ratio,
};

/**
 * Drivers and tuning of a vented box that loses, from its impedance: the box whose magnitude turns at the two peaks and at the
 * dip between them, and has both readings in ohms. Five unknowns follow from five equations by Newton's method, from the box
 * without losses of `ventedImpedance`.
 *
 * $$ \frac{Z}{R_e} = 1 + \frac{1}{Q_{es}}\left[\frac{1}{Q_{ms}} + j\left(\frac{f}{f_s} - \frac{f_s}{f}\right) +
 *    \frac{\alpha f_s/f_b}{y}\right]^{-1},\quad
 *    y = \frac{1}{Q_L} + \frac{1}{\frac{1}{ju} + \frac{1}{Q_A}} + \frac{1}{ju + \frac{1}{Q_P}},\quad u = \frac{f}{f_b} $$
 * $$ \frac{d|Z|}{df} = 0 \text{ at } f_L, f_M, f_H;\quad \max(|Z(f_L)|, |Z(f_H)|) = Z_p,\quad |Z(f_f)| = Z_f $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_L, f_M, f_H$ | `lowerPeak`, `dip`, `upperPeak` | Hz | peaks of the impedance and the dip between them |
 * | $Z_p$ | `peakImpedance` | Ω | at the higher peak |
 * | $f_f, Z_f$ | `flankFrequency`, `flankImpedance` | Hz, Ω | a reading on the side of a peak |
 * | $Q_L, Q_A, Q_P$ | `QL`, `QA`, `QP` | 1 | losses of the box at its tuning |
 *
 * @validity one kind of driver; readings where the inductance of the coil does not count
 * @neglects the inductance of the coil; losses that depend on the level
 * @returns what follows; `Impossible` where no such box was found
 * @throws InputError `unit`, `not-finite`, `not-positive`, `inconsistent` where the readings do not lie between each other, `conflict`
 *   where both QL and Qms are given
 * @source small1973vented1 network of the driver in a vented box, and the definitions of the box losses
 * @example lossyVentedImpedance({ lowerPeak: '18 Hz', dip: '27 Hz', upperPeak: '45 Hz', peakImpedance: '60 Ω', flankFrequency: '52 Hz', flankImpedance: '25 Ω', Re: '6 Ω', QL: 15 }).Qms // 5.48
 */
export function lossyVentedImpedance(input: LossyVentedImpedanceInput): LossyVentedImpedance | Impossible {
  const { QL, Qms, QA, QP, ...read } = readFields('impedance', input, shape);
  const faults: Fault[] = [];
  if (QL !== undefined && Qms !== undefined) {
    const remedy = 'Leave one out: it follows from the other.';
    faults.push({ code: 'conflict', path: 'impedance.Qms', got: Qms, expected: 'either QL or Qms', remedy });
  }
  refuse(faults);
  const near = ventedImpedance({ lowerPeak: read.lowerPeak, dip: read.dip, upperPeak: read.upperPeak });
  const quality = ventedImpedanceQuality(read);
  const [absorption, vent] = [1 / (QA ?? Infinity), 1 / (QP ?? Infinity)];
  const { dip, Re } = read;
  const turns = [read.lowerPeak, dip, read.upperPeak];
  const [atPeak, atFlank] = [read.peakImpedance / Re, read.flankImpedance / Re];
  const z = { size: 0, slope: 0 };
  /** The box at some unknowns: logarithms of what it is without losses, and the loss that is not known. */
  const boxAt = (x: Float64Array) => ({
    fb: dip * Math.exp(x[0]!),
    h: near.h * Math.exp(x[1]!),
    alpha: near.alpha * Math.exp(x[2]!),
    Qes: quality.Qes * Math.exp(x[3]!),
    suspension: Qms === undefined ? x[4]! / quality.Qms : 1 / Qms,
    leak: Qms === undefined ? leak : x[4]!,
    absorption,
    vent,
  });
  let leak = 0;
  const residual = (x: Float64Array, out: Float64Array) => {
    const box = boxAt(x);
    let highest = 0;
    for (let i = 0; i < 3; i++) {
      impedanceAt(box, turns[i]! / box.fb, z);
      out[i] = z.slope;
      highest = Math.max(highest, z.size);
    }
    out[3] = Math.log(highest / atPeak);
    impedanceAt(box, read.flankFrequency / box.fb, z);
    out[4] = Math.log(z.size / atFlank);
  };
  const none = impossible('no-driver', 'No driver was found that has this impedance in a box with these losses.');
  const whole = 1 / (QL ?? Infinity);
  let x = new Float64Array([0, 0, 0, 0, Qms === undefined ? 1 : 0]);
  // A walk that loses its way is tried again in smaller steps of the leak.
  for (let at = -1, step = whole; at < whole; ) {
    leak = Math.min(whole, Math.max(at, 0) + step);
    const walk = newtonRoot(residual, x, { longestStep: 0.5, tolerance: 1e-11 });
    if (walk.ok) {
      x = new Float64Array(walk.x);
      at = leak;
    } else {
      step /= 2;
      if (!(step > whole / 40)) return none;
    }
  }
  const box = boxAt(x);
  const [lower, least, upper] = turns.map((f) => {
    impedanceAt(box, f / box.fb, z);
    return z.size;
  }) as [number, number, number];
  if (!(least < lower && least < upper)) return none;
  const { fb, h, alpha, Qes, suspension, leak: rest } = box;
  return {
    ok: true,
    fb: si('frequency', fb),
    fs: si('frequency', fb / h),
    alpha,
    Qes,
    Qms: 1 / suspension,
    Qts: 1 / (1 / Qes + suspension),
    QL: 1 / rest,
  };
}
