import type { Warning } from '../fault/index.js';
import { besselQuotients } from '../numeric/index.js';
import { type LengthInput, positive, readFields } from '../quantity/index.js';

/**
 * The cross-section of a line and the effect of its walls on the air, in plain SI numbers. You can use your own in the same way.
 */
export interface LineSection {
  /** m² */
  readonly area: number;
  /** Greatest width between walls, m. It determines the frequency up to which only plane waves travel. */
  readonly width: number;
  /** $kw$ at which the first transverse mode begins to travel, 1. */
  readonly cutOn: number;
  /**
   * Fills `out` with the real and imaginary part of F, then of 1 − F. F is the fraction of the section in the boundary layer,
   * for the inverse thickness $s = \sqrt{\omega/\nu}$ in 1/m, where ν is the kinematic viscosity or the thermal diffusivity.
   */
  readonly layer: (s: number, out: Float64Array) => void;
  /** Warnings that the shape of the section is outside the range of its formula. */
  readonly warnings: readonly Warning[];
  /** Citation keys. */
  readonly sources: readonly string[];
}

export interface RoundSectionInput {
  /** Inner diameter. */
  readonly diameter: LengthInput;
}

/**
 * Section of a round tube with smooth, rigid walls of constant temperature.
 *
 * $$ F = \frac{2J_1(x)}{x\,J_0(x)},\qquad 1 - F = -\frac{J_2(x)}{J_0(x)},\qquad x = a\,s\,\sqrt{-j} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `diameter` | m | radius |
 * | $s$ | `s` | 1/m | inverse thickness of the boundary layer |
 *
 * @validity wavelengths much longer than the radius, and a radius much larger than the mean free path of the molecules (0.1 µm).
 * @neglects roughness, the flexing of the walls, flow.
 * @returns a {@link LineSection}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source zwikker1949 line constants; stinson1991
 * @example roundSection({ diameter: '75 mm' }).area // 0.004418 m²
 */
export function roundSection(input: RoundSectionInput): LineSection {
  return roundSectionOf(readFields('section', input, { diameter: positive('length') }).diameter / 2);
}

/** {@link roundSection} for an unchecked radius in m. */
export function roundSectionOf(radius: number): LineSection {
  return {
    area: Math.PI * radius * radius,
    width: 2 * radius,
    // Twice the first zero of J1'.
    cutOn: 3.682367562681319,
    layer: (s, out) => roundLayer(radius, s, out),
    warnings: [],
    sources: ['zwikker1949', 'stinson1991'],
  };
}

/** F and 1 − F of a round tube. */
function roundLayer(radius: number, s: number, out: Float64Array): void {
  const r = radius * s * Math.SQRT1_2;
  besselQuotients(r, -r, out);
  const a = out[0]!;
  const b = out[1]!;
  // 2/x = (1 + j)/r for x = r (1 − j).
  out[0] = (a - b) / r;
  out[1] = (a + b) / r;
  out[2] = -out[2]!;
  out[3] = -out[3]!;
}

export interface SlitSectionInput {
  /** The long side. */
  readonly width: LengthInput;
  /** The short side, which is the distance between the two wide walls. */
  readonly height: LengthInput;
}

/**
 * Section of a slit between two wide walls that are close together. The two short sides are taken to be frictionless.
 *
 * $$ F = \frac{\tanh x}{x},\qquad x = \tfrac h2\,s\,\sqrt{j} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $h$ | `height` | m | distance between the walls |
 * | $w$ | `width` | m | width |
 * | $s$ | `s` | 1/m | inverse thickness of the boundary layer |
 *
 * @validity a width of at least ten heights, otherwise results carry the warning `outside-validity`; the neglected short sides
 *   would add about $h/w$ to the loss (estimate).
 * @neglects the short sides, roughness, the flexing of the walls, flow.
 * @returns a {@link LineSection}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source zwikker1949 slit; stinson1991
 * @example slitSection({ width: '300 mm', height: '20 mm' }).area // 0.006 m²
 */
export function slitSection(input: SlitSectionInput): LineSection {
  const { width, height } = readFields('section', input, { width: positive('length'), height: positive('length') });
  const [h, w] = height < width ? [height, width] : [width, height];
  return {
    area: w * h,
    width: w,
    cutOn: Math.PI,
    layer: (s, out) => slitLayer(h / 2, s, out),
    warnings:
      w < 10 * h
        ? [
            {
              code: 'outside-validity',
              path: 'width/height',
              got: w / h,
              expected: 'at least 10, because the formula neglects the short sides',
            },
          ]
        : [],
    sources: ['zwikker1949', 'stinson1991'],
  };
}

/** F and 1 − F of a slit of half height b. */
function slitLayer(b: number, s: number, out: Float64Array): void {
  const r = b * s * Math.SQRT1_2;
  if (r < 1) {
    // 1 − F = (x²/D)/(1 + x²/D) with D = 3 + x²/(5 + x²/(7 + …)) avoids the difference of nearly equal numbers.
    const square = 2 * r * r;
    let re = 25;
    let im = 0;
    for (let odd = 23; odd >= 3; odd -= 2) {
      const unit = square / (re * re + im * im);
      [re, im] = [odd + im * unit, re * unit];
    }
    const unit = square / (re * re + im * im);
    const [a, b] = [im * unit, re * unit];
    const whole = 1 / ((1 + a) ** 2 + b * b);
    out[0] = (1 + a) * whole;
    out[1] = -b * whole;
    out[2] = (a * (1 + a) + b * b) * whole;
    out[3] = b * whole;
    return;
  }
  // x = r (1 + j); tanh x = (1 − e)/(1 + e) with e = exp(−2x).
  const shrink = Math.exp(-2 * r);
  const er = shrink * Math.cos(2 * r);
  const ei = -shrink * Math.sin(2 * r);
  const unit = 1 / (((1 + er) ** 2 + ei * ei) * 2 * r);
  const re = (1 - er * er - ei * ei) * unit;
  const im = -2 * ei * unit;
  out[0] = re + im;
  out[1] = im - re;
  out[2] = 1 - out[0]!;
  out[3] = -out[1]!;
}

/**
 * The same section without friction and heat conduction at the walls, for a line without loss.
 *
 * @validity wavelengths much longer than the width; losses too small to matter
 * @returns a {@link LineSection}
 * @source morse1968 plane waves in a duct
 * @example compileLine({ section: withoutLoss(roundSection({ diameter: '75 mm' })), length: '20 cm' })
 */
export const withoutLoss = (section: LineSection): LineSection => ({
  ...section,
  layer: (_s, out) => {
    out[0] = out[1] = out[3] = 0;
    out[2] = 1;
  },
});
