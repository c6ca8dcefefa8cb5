import { standardAir } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { acousticMass, effectiveLength } from '@airspring/core/vent';
import { check } from '../../ledger/check.js';
import relations from '../duct/relations.json' with { type: 'json' };

const rayleigh = {
  key: 'rayleigh1896',
  locator: 'secs. 303-307; one flanged and one free end, limit of low frequency',
};
const vent = (a: number, L: number, count = 1) => ({ diameter: si('length', 2 * a), length: si('length', L), count });

check('vent.effective-length.low', {
  formula: 'vent/effectiveLength',
  source: rayleigh,
  status: 'derived',
  kind: 'identity',
  given: { a: { value: 0.0508, unit: 'm' }, L: { value: 0.16332463, unit: 'm' } },
  got: ({ a, L }) => effectiveLength({ vent: vent(a, L) }),
  expected: 0.23621755,
  unit: 'm',
  tolerance: { relative: 5e-9, why: 'eight digits' },
});

check('vent.effective-length.middle', {
  formula: 'vent/effectiveLength',
  source: {
    key: 'norris1989',
    locator: 'flanged end 0.82159 radii, and the free one of levine1948, 0.6133: low frequency',
  },
  status: 'derived',
  kind: 'table',
  given: { d: { value: [0.05, 0.1, 0.15], unit: 'm' }, L: { value: [0.05, 0.2, 0.5], unit: 'm' } },
  got: ({ d, L }) => effectiveLength({ vent: vent(d / 2, L) }),
  expected: [0.05 + 0.025 * 1.43489, 0.2 + 0.05 * 1.43489, 0.5 + 0.075 * 1.43489],
  unit: 'm',
  tolerance: { absolute: 5e-6, why: 'the free end has four digits: half of the last is 3.8 µm for the widest' },
});

check('vent.effective-length.end', {
  formula: 'vent/effectiveLength',
  source: {
    key: 'levine1948',
    locator:
      'eq. VI.4, the free end, and the flush one of norris1989, exact at ka = 0.1 and 0.2: lengths for which kℓ is 0.5',
  },
  status: 'derived',
  kind: 'table',
  given: {
    a: { value: [0.05, 0.05], unit: 'm' },
    L: { value: [0.05 * (5 - 0.8174506 - 0.6109874926), 0.05 * (2.5 - 0.8053118 - 0.6063795971)], unit: 'm' },
    k: { value: [2, 4], unit: 'rad/m' },
  },
  got: ({ a, L, k }) => {
    const frequency = si('frequency', (k * standardAir.speedOfSound) / (2 * Math.PI));
    return effectiveLength({ vent: vent(a, L), frequency });
  },
  expected: [0.25, 0.125],
  unit: 'm',
  tolerance: { relative: 0.002, why: 'both ends are fits, within 0.4 % here, and not half of the whole' },
});

check('vent.acoustic-mass.line', {
  formula: 'vent/acousticMass',
  source: {
    key: 'mpmath',
    locator: 'sec. 307; the vent as a line, tan(kl) = S/(kV) (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    V: { value: [0.02, 0.04, 0.08], unit: 'm³' },
    L: { value: [0.12, 0.15, 0.2], unit: 'm' },
    a: { value: [0.025, 0.0375, 0.05], unit: 'm' },
    n: { value: [1, 2, 3], unit: '1' },
  },
  // n vents on n times the volume tune as one vent on the volume.
  got: ({ V, L, a, n }) => {
    const compliance = (n * V) / (standardAir.density * 343.2 ** 2);
    return 1 / (2 * Math.PI * Math.sqrt(acousticMass({ vent: vent(a, L, n) }) * compliance));
  },
  expected: relations['vent.tuning.line'],
  unit: 'Hz',
  tolerance: { relative: 0.005, why: 'the compliance of the air in the vent is left out, (kl)²/6' },
});
