import { type Fault, refuse } from '../fault/index.js';
import { type LengthInput, notNegative, optional, positive, readFields } from '../quantity/index.js';

/**
 * How wide a round duct is along its length: the inner radius in m at a position in m from the inner end. A function with
 * its length: one of your own is used exactly as ours are.
 *
 * @example const waist: Profile = Object.assign((x: number) => 0.03 + (x - 0.1) ** 2, { length: 0.2, joints: [], sources: ['own'] });
 */
export interface Profile {
  (position: number): number;
  /** m */
  readonly length: number;
  /** Positions, rising, at which one curve passes into the next: a sum over the profile stops and starts again there. */
  readonly joints: readonly number[];
  /** Citation keys. */
  readonly sources: readonly string[];
}

const profile = (radius: (x: number) => number, length: number, joints: readonly number[] = []): Profile =>
  Object.assign(radius, { length, joints, sources: ['rayleigh1896'] });

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

/** Cone from one diameter to another; straight where they are equal. */
export function conicalProfile(input: TaperInput): Profile {
  const { innerDiameter, outerDiameter, length } = readFields('profile', input, taperShape);
  const slope = (outerDiameter - innerDiameter) / 2 / length;
  return profile((x) => innerDiameter / 2 + slope * x, length);
}

/** Its radius grows by the same factor over each step of length. */
export function exponentialProfile(input: TaperInput): Profile {
  const { innerDiameter, outerDiameter, length } = readFields('profile', input, taperShape);
  const growth = Math.log(outerDiameter / innerDiameter) / length;
  return profile((x) => (innerDiameter / 2) * Math.exp(growth * x), length);
}

export interface FlaredProfileInput {
  /** Inner diameter of the straight part. */
  readonly diameter: LengthInput;
  /** With both flares. */
  readonly length: LengthInput;
  /** Radius of the quarter round at the inner end; default none. */
  readonly innerFlare?: LengthInput;
  /** Radius of the quarter round at the outer end; default none. */
  readonly outerFlare?: LengthInput;
}

const flaredShape = {
  diameter: positive('length'),
  length: positive('length'),
  innerFlare: optional(notNegative('length')),
  outerFlare: optional(notNegative('length')),
};

/** A straight tube with a quarter round at one end or both. */
export function flaredProfile(input: FlaredProfileInput): Profile {
  const { diameter, length, innerFlare = 0, outerFlare = 0 } = readFields('profile', input, flaredShape);
  const faults: Fault[] = [];
  if (innerFlare + outerFlare > length) {
    const expected = `at least both flares, ${innerFlare + outerFlare} m`;
    faults.push({
      code: 'inconsistent',
      path: 'profile.length',
      got: length,
      expected,
      remedy: 'Lengthen it, or flare it less.',
    });
  }
  refuse(faults);
  const rise = (into: number, radius: number) => radius - Math.sqrt(Math.max(0, radius * radius - into * into));
  const radius = (x: number) => {
    const inner = innerFlare - x;
    const outer = x - (length - outerFlare);
    return diameter / 2 + (inner > 0 ? rise(inner, innerFlare) : 0) + (outer > 0 ? rise(outer, outerFlare) : 0);
  };
  const joints = [innerFlare, length - outerFlare].filter((x) => x > 0 && x < length);
  return profile(radius, length, [...new Set(joints)]);
}
