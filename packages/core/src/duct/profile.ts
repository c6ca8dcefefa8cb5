import { type Fault, refuse } from '../fault/index.js';
import { type LengthInput, notNegative, optional, positive, readFields } from '../quantity/index.js';
import { NANOMETRE } from '../quantity/nanometre.js';

/**
 * The width of a round duct along its length, in plain SI numbers. You can use your own profile in the same way.
 *
 * @example const waist: Profile = { radius: (x) => 0.03 + (x - 0.1) ** 2, length: 0.2, joints: [], sources: ['own'] };
 */
export interface Profile {
  /** Inner radius, m, at a position in m from the inner end. */
  readonly radius: (position: number) => number;
  /** m */
  readonly length: number;
  /** Positions, in increasing order, at which one curve joins the next. Sums over the profile are split there. */
  readonly joints: readonly number[];
  /** Citation keys. */
  readonly sources: readonly string[];
}

const profile = (radius: (x: number) => number, length: number, joints: readonly number[] = []): Profile => ({
  radius,
  length,
  joints,
  sources: ['rayleigh1896'],
});

export interface TaperInput {
  /** Inner diameter at the inner end. */
  readonly innerDiameter: LengthInput;
  /** Inner diameter at the outer end. */
  readonly outerDiameter: LengthInput;
  readonly length: LengthInput;
}

const taperShape = {
  innerDiameter: positive('length'),
  outerDiameter: positive('length'),
  length: positive('length'),
};

/**
 * Conical duct from one diameter to another; a straight tube when they are equal.
 *
 * $$ r(x) = a + (b - a)\,\frac xL $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a, b$ | `innerDiameter`, `outerDiameter` | m | radii of the two ends |
 * | $L$ | `length` | m | length |
 *
 * @validity a wall that opens by no more than 45°.
 * @neglects the thickness of the wall.
 * @returns a {@link Profile}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source rayleigh1896 secs. 303-308
 * @example conicalProfile({ innerDiameter: '60 mm', outerDiameter: '90 mm', length: '15 cm' }).radius(0.075) // 0.0375 m
 */
export function conicalProfile(input: TaperInput): Profile {
  const { innerDiameter, outerDiameter, length } = readFields('profile', input, taperShape);
  const slope = (outerDiameter - innerDiameter) / 2 / length;
  return profile((x) => innerDiameter / 2 + slope * x, length);
}

/**
 * Exponential horn, whose radius grows by the same factor over equal lengths.
 *
 * $$ r(x) = a\left(\frac ba\right)^{x/L} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a, b$ | `innerDiameter`, `outerDiameter` | m | radii of the two ends |
 * | $L$ | `length` | m | length |
 *
 * @validity a wall that opens by no more than 45°.
 * @neglects the thickness of the wall.
 * @returns a {@link Profile}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source fletcher1998 exponential horn
 * @example exponentialProfile({ innerDiameter: '60 mm', outerDiameter: '90 mm', length: '15 cm' }).radius(0.075) // 0.03674 m
 */
export function exponentialProfile(input: TaperInput): Profile {
  const { innerDiameter, outerDiameter, length } = readFields('profile', input, taperShape);
  const growth = Math.log(outerDiameter / innerDiameter) / length;
  return profile((x) => (innerDiameter / 2) * Math.exp(growth * x), length);
}

export interface FlaredProfileInput {
  /** Inner diameter of the straight part. */
  readonly diameter: LengthInput;
  /** Length including both flares. */
  readonly length: LengthInput;
  /** Radius of the quarter round at the inner end; default none. */
  readonly innerFlare?: LengthInput | undefined;
  /** Radius of the quarter round at the outer end; default none. */
  readonly outerFlare?: LengthInput | undefined;
}

const flaredShape = {
  diameter: positive('length'),
  length: positive('length'),
  innerFlare: optional(notNegative('length')),
  outerFlare: optional(notNegative('length')),
};

/**
 * A straight tube with a quarter-round flare at one end or both.
 *
 * $$ r = a + R - \sqrt{R^2 - s^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $a$ | `diameter` | m | radius of the straight part |
 * | $R$ | `innerFlare`, `outerFlare` | m | radius of the quarter round |
 * | $s$ | | m | distance into the flare |
 *
 * @validity exact geometry; a sum over plane slices is too light, see `profileMass` and, for the ends of a vent, `flared`.
 * @neglects the thickness of the wall.
 * @returns a {@link Profile}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source rayleigh1896 secs. 303-308
 * @example flaredProfile({ diameter: '70 mm', length: '20 cm', outerFlare: '20 mm' }).radius(0.2) // 0.055 m
 */
export function flaredProfile(input: FlaredProfileInput): Profile {
  const { diameter, length, innerFlare = 0, outerFlare = 0 } = readFields('profile', input, flaredShape);
  const faults: Fault[] = [];
  if (innerFlare + outerFlare > length + NANOMETRE) {
    const expected = `at least the length of both flares, ${innerFlare + outerFlare} m`;
    faults.push({
      code: 'inconsistent',
      path: 'profile.length',
      got: length,
      expected,
      remedy: 'Lengthen the duct, or make the flares smaller.',
    });
  }
  refuse(faults);
  const rise = (into: number, radius: number) => radius - Math.sqrt(Math.max(0, radius * radius - into * into));
  const radius = (x: number) => {
    const inner = innerFlare - x;
    const outer = x - (length - outerFlare);
    return diameter / 2 + (inner > 0 ? rise(inner, innerFlare) : 0) + (outer > 0 ? rise(outer, outerFlare) : 0);
  };
  const straightEnd = length - outerFlare;
  const joints = straightEnd - innerFlare > NANOMETRE ? [innerFlare, straightEnd] : [innerFlare];
  return profile(
    radius,
    length,
    joints.filter((x) => x > 0 && x < length),
  );
}
