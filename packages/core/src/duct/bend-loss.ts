import { refuse } from '../fault/index.js';
import {
  type AngleInput,
  type LengthInput,
  notNegative,
  optional,
  positive,
  type RatioInput,
  readFields,
} from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';

/** A bend of a duct. */
export interface BendLossInput {
  readonly diameter: LengthInput;
  readonly angle: AngleInput;
  /** Radius of the bend on the centre line; left out for a mitre, an elbow without any radius. */
  readonly centreLineRadius?: LengthInput | undefined;
  /** Friction factor of the wall (Darcy); default 0.02. */
  readonly friction?: RatioInput | undefined;
}

const shape = {
  diameter: positive('length'),
  angle: positive('angle'),
  centreLineRadius: optional(positive('length')),
  friction: optional(notNegative('ratio')),
};

/** {@link bendLoss} for SI numbers that were read before. */
export function bendLossOf(angle: number, ratio: number | undefined, friction = 0.02): number {
  // The formulas end at half a turn. Beyond it, half turns follow each other.
  if (angle > Math.PI) return bendLossOf(Math.PI, ratio, friction) + bendLossOf(angle - Math.PI, ratio, friction);
  const half = Math.sin(angle / 2);
  if (ratio === undefined) return 0.42 * half + 2.56 * half ** 3;
  const swirl = (6.6 * friction * (Math.sqrt(half) + half)) / ratio ** ((4 * angle) / Math.PI);
  return friction * angle * ratio + (0.1 + 2.4 * friction) * half + swirl;
}

/**
 * Loss coefficient of a bend, with the friction along it:
 *
 * $$ K = f\alpha\frac rD + (0.1 + 2.4 f)\sin\frac\alpha2 + \frac{6.6 f\,(\sqrt{\sin\alpha/2} + \sin\alpha/2)}{(r/D)^{4\alpha/\pi}} $$
 *
 * $$ K = 0.42\sin\frac\alpha2 + 2.56\sin^3\frac\alpha2 \quad\text{for a mitre} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\alpha$ | `angle` | rad | angle of the bend |
 * | $r/D$ | `centreLineRadius` / `diameter` | 1 | radius of the centre line over the diameter |
 * | $f$ | `friction` | 1 | friction factor |
 *
 * @validity steady turbulent flow; r/D of 0.5 and more. Beyond half a turn it is the sum of half turns and what is left
 * @neglects other bends and ends nearby; that the flow turns about
 * @returns Δp over ½ρu²
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source rennels2012 bends and mitres
 * @example bendLoss({ diameter: '75 mm', angle: '90 deg', centreLineRadius: '112.5 mm' }) // 0.243
 */
export function bendLoss(input: BendLossInput): number {
  const { diameter, angle, centreLineRadius, friction } = readFields('bend', input, shape);
  if (centreLineRadius !== undefined && centreLineRadius < diameter / 2 - NANOMETRE) {
    const expected = `at least half the diameter, ${diameter / 2} m`;
    const remedy = 'Bend it less sharply, or leave the radius out for a mitre.';
    refuse([{ code: 'inconsistent', path: 'bend.centreLineRadius', got: centreLineRadius, expected, remedy }]);
  }
  return bendLossOf(angle, centreLineRadius === undefined ? undefined : centreLineRadius / diameter, friction);
}
