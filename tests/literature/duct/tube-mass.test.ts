import { standardAir } from '@airspring/core/air';
import { tubeMass } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import ranges from './ranges.json' with { type: 'json' };
import relations from './relations.json' with { type: 'json' };

const tubeAir = { ...standardAir, density: si('density', 1.1769) };
const mass = (a: number, length: number, air = standardAir) =>
  tubeMass({ diameter: si('length', 2 * a), length: si('length', length) }, air);

check('duct.tube-mass.lumped', {
  formula: 'duct/tubeMass',
  source: { key: 'rayleigh1896', locator: 'secs. 303-307: resonance of mass and compliance' },
  status: 'derived',
  kind: 'identity',
  given: {
    V: { value: [0.02, 0.04, 0.08], unit: 'm³' },
    L: { value: [0.12, 0.15, 0.2], unit: 'm' },
    a: { value: [0.025, 0.0375, 0.05], unit: 'm' },
  },
  got: ({ V, L, a }) => {
    const compliance = V / (standardAir.density * 343.2 ** 2);
    return 1 / (2 * Math.PI * Math.sqrt(mass(a, L + (0.8216 + 0.6133) * a) * compliance));
  },
  expected: [43.34935176, 40.20982718, 32.83118641],
  unit: 'Hz',
  tolerance: { relative: 1e-9, why: 'closed formula, ten digits; the density cancels' },
});

check('duct.tube-mass.lossy', {
  formula: 'duct/tubeMass',
  air: tubeAir,
  source: {
    key: 'mpmath',
    locator:
      'line constants with viscosity and heat conduction, evaluated with Bessel functions (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: [0.025, 0.05], unit: 'm' },
    L: { value: [0.15, 0.2], unit: 'm' },
    f: { value: [40, 30], unit: 'Hz' },
  },
  got: ({ a, L, f }) => 2 * Math.PI * f * mass(a, L, tubeAir),
  expected: relations['duct.tube-mass.lossy'],
  unit: 'Pa·s/m³',
  tolerance: {
    relative: 0.02,
    why: 'the boundary layer adds its thickness over the radius, 1.4 % and 0.8 %, the length (kl)²/3, 0.4 %: together the 1.8 % that is found',
  },
});

check('duct.tube-mass.ends', {
  formula: 'duct/tubeMass',
  air: tubeAir,
  source: {
    key: 'mpmath',
    locator: 'lossy line by Bessel functions, kl of 0.01, 0.11 and 0.5; scripts line-chain.py, ranges.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: ranges.tubes.map((tube) => tube.a), unit: 'm' },
    L: { value: ranges.tubes.map((tube) => tube.L), unit: 'm' },
  },
  got: ({ a, L }) => mass(a, L, tubeAir),
  expected: ranges.tubes.map((tube) => tube.mass),
  unit: 'kg/m⁴',
  tolerance: {
    relative: 0.095,
    why: 'the length, (kl)²/3, 8.3 % at the end of the range, and the boundary layer, 0.8 %',
  },
});
