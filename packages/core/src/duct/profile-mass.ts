import { type Air, readAir, standardAir } from '../air/index.js';
import { type Fault, InputError, refuse, type Warning } from '../fault/index.js';
import { boundedMinimum, integral } from '../numeric/index.js';
import { type AcousticMass, type Length, si } from '../quantity/index.js';
import type { Profile } from './profile.js';

/** Number of pieces into which each curve of a profile is divided. */
const PIECES = 16;

/** A duct of any profile as a single lumped mass. */
export interface ProfileMass {
  readonly acousticMass: AcousticMass;
  /** Diameter at the narrowest place, where the air is fastest. */
  readonly narrowestDiameter: Length;
  /** Length of a straight tube of the narrowest diameter with the same mass. */
  readonly effectiveLength: Length;
  readonly warnings: readonly Warning[];
}

/**
 * Acoustic mass of the air in a duct of any profile, without its ends, and its narrowest diameter.
 *
 * $$ M_A = \rho\int_0^L \frac{dx}{S(x)},\qquad \ell = S_{min}\int_0^L\frac{dx}{S(x)} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $S$ | `profile` | m² | cross-section, $\pi r^2$ |
 * | $L$ | `profile.length` | m | length |
 * | $\rho$ | `density` | kg/m³ | density of the air |
 *
 * @validity a duct that is short compared with the wavelength; waists no shorter than a fiftieth of their curve; walls that
 *   open by no more than 45°, otherwise the warning `outside-validity`. In a wider flare the wave fronts are curved, and the sum
 *   over plane slices is too light (a lower bound).
 * @neglects the boundary layer, the ends.
 * @returns kg/m⁴ and m, with warnings
 * @throws InputError `not-finite`, `not-positive` when the profile gives no radius or length, `unsorted` for its joints
 * @source rayleigh1896 secs. 303-308
 * @example profileMass(conicalProfile({ innerDiameter: '60 mm', outerDiameter: '90 mm', length: '15 cm' })).effectiveLength // 0.1 m
 */
export function profileMass(profile: Profile, air: Air = standardAir): ProfileMass {
  readAir(air);
  refuse(profileFaults(profile));
  const cuts = [0, ...profile.joints, profile.length];
  let perArea = 0;
  let narrowest = Number.POSITIVE_INFINITY;
  let steepest = 0;
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1]!, cuts[i]!];
    narrowest = Math.min(narrowest, narrowestRadius(profile, from, to));
    // The integral is taken in pieces, because the points of a single rule could miss a waist.
    const inverse = (x: number) => (narrowest / radiusAt(profile, x)) ** 2;
    for (let k = 0; k < PIECES; k++) {
      const [start, end] = [k, k + 1].map((n) => from + ((to - from) * n) / PIECES) as [number, number];
      perArea += integral(inverse, start, end) / (Math.PI * narrowest ** 2);
    }
    steepest = Math.max(steepest, steepestSlope(profile, from, to));
  }
  return {
    acousticMass: si('acousticMass', air.density * perArea),
    narrowestDiameter: si('length', 2 * narrowest),
    effectiveLength: si('length', Math.PI * narrowest ** 2 * perArea),
    warnings: slopeWarnings(steepest),
  };
}

/** Faults of a profile without a positive length, or with joints that do not increase from one end to the other. */
export function profileFaults({ length, joints }: Profile): Fault[] {
  const faults: Fault[] = [];
  if (!(length > 0 && length < Number.POSITIVE_INFINITY)) {
    const code = Number.isFinite(length) ? 'not-positive' : 'not-finite';
    const remedy = 'Correct the profile.';
    faults.push({ code, path: 'profile.length', got: length, expected: 'a length above zero', remedy });
    return faults;
  }
  joints.forEach((joint, i) => {
    const before = joints[i - 1] ?? 0;
    if (joint > before && joint < length) return;
    const expected = `a position between ${before} and ${length} m`;
    faults.push({
      code: 'unsorted',
      path: `profile.joints[${i}]`,
      got: joint,
      expected,
      remedy: 'Correct the profile.',
    });
  });
  return faults;
}

/** Radius of a profile at x; throws when it is not positive and finite. */
export function radiusAt(profile: Profile, x: number): number {
  const radius = profile.radius(x);
  if (radius > 0 && radius < Number.POSITIVE_INFINITY) return radius;
  const code = Number.isFinite(radius) ? 'not-positive' : 'not-finite';
  const expected = `a radius above zero at ${x} m`;
  throw new InputError([{ code, path: 'profile', got: radius, expected, remedy: 'Correct the profile.' }]);
}

/** Least radius between two positions: the least of 65 samples, refined between its neighbours. */
function narrowestRadius(profile: Profile, from: number, to: number): number {
  const pieces = 64;
  const at = (k: number) => from + ((to - from) * Math.min(Math.max(k, 0), pieces)) / pieces;
  let best = 0;
  for (let k = 1; k <= pieces; k++) if (radiusAt(profile, at(k)) < radiusAt(profile, at(best))) best = k;
  const { value } = boundedMinimum((x) => radiusAt(profile, x), at(best - 1), at(best + 1));
  return Math.min(value, radiusAt(profile, at(best)));
}

/** Warns of the greatest slope of the wall over 64 pieces, which finds a flare that opens fully whatever its size. */
function steepestSlope(profile: Profile, from: number, to: number): number {
  const pieces = 64;
  const step = (to - from) / pieces;
  let steepest = 0;
  for (let k = 0; k < pieces; k++) {
    const rise = radiusAt(profile, from + (k + 1) * step) - radiusAt(profile, from + k * step);
    steepest = Math.max(steepest, Math.abs(rise) / step);
  }
  return steepest;
}

const slopeWarnings = (slope: number): Warning[] =>
  slope > 1 + 1e-9
    ? [{ code: 'outside-validity', path: 'profile', got: slope, expected: 'a wall with a slope of at most 1 (45°)' }]
    : [];
