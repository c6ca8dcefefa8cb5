import { standardAir } from '@airspring/core/air';
import { conicalProfile, exponentialProfile, flaredProfile, type Profile, profileMass } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import relations from './relations.json' with { type: 'json' };

const air = { ...standardAir, density: si('density', 1.2) };
const check = checkIn(air);
const m = (value: number) => si('length', value);
// The last two rise by 45°: the cone throughout, the exponential horn at its mouth.
const taper = {
  a: { value: [0.02, 0.03, 0.05, 0.02, 0.02], unit: 'm' },
  b: { value: [0.08, 0.031, 0.01, 0.05, 0.05], unit: 'm' },
  L: { value: [0.3, 0.15, 0.05, 0.03, 0.05 * Math.log(2.5)], unit: 'm' },
} as const;

check('duct.profile.cone', {
  formula: 'duct/conicalProfile',
  source: { key: 'mpmath', locator: '∫dx/S of a truncated cone by quadrature (rayleigh1896); script relations.py' },
  status: 'derived',
  kind: 'program',
  given: taper,
  got: ({ a, b, L }) =>
    profileMass(conicalProfile({ innerDiameter: m(2 * a), outerDiameter: m(2 * b), length: m(L) }), air).acousticMass,
  expected: relations['duct.profile.cone'],
  unit: 'kg/m⁴',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.profile.exponential', {
  formula: 'duct/exponentialProfile',
  source: {
    key: 'mpmath',
    locator: '∫dx/S of an exponential horn by quadrature (fletcher1998); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: taper,
  got: ({ a, b, L }) =>
    profileMass(exponentialProfile({ innerDiameter: m(2 * a), outerDiameter: m(2 * b), length: m(L) }), air)
      .acousticMass,
  expected: relations['duct.profile.exponential'],
  unit: 'kg/m⁴',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

// Values of ∫ds/(1 + R − √(R² − s²))² over the flare, by scipy.integrate.quad.
const flares = [0.22695657850124523, 0.41887771471400986, 0.736399858718715, 1.223060481584872, 1.6040261262298374];

check('duct.profile.flare', {
  formula: 'duct/flaredProfile',
  source: { key: 'scipy', locator: 'integrate.quad of dx/S over a quarter round, by its radius over that of the tube' },
  status: 'derived',
  kind: 'program',
  given: { R: { value: [0.25, 0.5, 1, 2, 3], unit: '1' } },
  got: ({ R }) =>
    profileMass(flaredProfile({ diameter: '2 m', length: m(2 + 2 * R), innerFlare: m(R), outerFlare: m(R) }))
      .effectiveLength,
  expected: flares.map((flare) => 2 + 2 * flare),
  unit: 'm',
  tolerance: { relative: 1e-14, why: 'both to rounding' },
});

check('duct.profile.narrowest', {
  formula: 'duct/profileMass',
  source: { key: 'rayleigh1896', locator: 'secs. 303-308: a waist, ∫dx/(π r²) of r = r0 + x²/h' },
  status: 'derived',
  kind: 'identity',
  given: { r0: { value: [0.01, 0.03, 0.06], unit: 'm' } },
  got: ({ r0 }) => {
    // A waist off the middle, at 0.12 of 0.3 m.
    const waist: Profile = { radius: (x) => r0 + (x - 0.12) ** 2 / 0.5, length: 0.3, joints: [], sources: ['own'] };
    return profileMass(waist).narrowestDiameter;
  },
  expected: [0.02, 0.06, 0.12],
  unit: 'm',
  tolerance: { relative: 1e-15, why: 'a minimum, found by search: its value is flat' },
});

check('duct.profile.flare-radius', {
  formula: 'duct/flaredProfile',
  source: { key: 'rayleigh1896', locator: 'secs. 303-308; the quarter circles by their equation, worked out apart' },
  status: 'derived',
  kind: 'identity',
  given: { x: { value: [0, 0.004, 0.1, 0.192, 0.196, 0.199], unit: 'm' } },
  got: ({ x }) =>
    flaredProfile({ diameter: '70 mm', length: '20 cm', innerFlare: '10 mm', outerFlare: '20 mm' }).radius(x),
  expected: [0.045, 0.037, 0.035, 0.039, 0.043, 0.048755002],
  unit: 'm',
  tolerance: { relative: 2e-9, why: 'eight digits of the last' },
});

check('duct.profile.flare-slope', {
  formula: 'duct/flaredProfile',
  source: { key: 'mpmath', locator: 'radius as the integral of the slope of a quarter round; script relations.py' },
  status: 'derived',
  kind: 'program',
  given: { x: { value: [0, 0.004, 0.1, 0.192, 0.199], unit: 'm' } },
  got: ({ x }) =>
    flaredProfile({ diameter: '70 mm', length: '20 cm', innerFlare: '10 mm', outerFlare: '20 mm' }).radius(x),
  expected: relations['duct.profile.flare-slope'],
  unit: 'm',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.profile-mass.cone', {
  formula: 'duct/profileMass',
  source: {
    key: 'mpmath',
    locator: '∫dx/S of a truncated cone by quadrature (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: { of: { value: 'acoustic mass; effective length; narrowest diameter', unit: '' } },
  got: () => {
    const cone = conicalProfile({ innerDiameter: '60 mm', outerDiameter: '90 mm', length: '15 cm' });
    const { acousticMass, effectiveLength, narrowestDiameter } = profileMass(cone, air);
    return [acousticMass, effectiveLength, narrowestDiameter];
  },
  expected: relations['duct.profile-mass.cone'],
  unit: 'kg/m⁴, m, m',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

/** A waist of which the mass is known: 1/r² = 400 (1 + exp(−((x − c)/w)²)), in m⁻². */
const waisted = (w: number): Profile => ({
  radius: (x) => 1 / Math.sqrt(400 * (1 + Math.exp(-(((x - 0.11) / w) ** 2)))),
  length: 0.2,
  joints: [],
  sources: ['own'],
});
check('duct.profile-mass.waist', {
  formula: 'duct/profileMass',
  source: { key: 'dlmf', locator: '7.2.1: the integral of exp(−t²), all of it but 1e-13 within the duct: √π w' },
  status: 'derived',
  kind: 'table',
  given: { w: { value: [0.015, 0.008, 0.004], unit: 'm' } },
  got: ({ w }) => profileMass(waisted(w), air).acousticMass,
  expected: [0.015, 0.008, 0.004].map((w) => (1.2 * 400 * (0.2 + Math.sqrt(Math.PI) * w)) / Math.PI),
  unit: 'kg/m⁴',
  tolerance: { relative: 1e-14, why: 'double precision' },
});
