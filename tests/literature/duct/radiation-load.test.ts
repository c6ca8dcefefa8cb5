import { standardAir } from '@airspring/core/air';
import { radiationLoad } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import ranges from './ranges.json' with { type: 'json' };
import relations from './relations.json' with { type: 'json' };

const source = {
  key: 'mpmath',
  locator: 'X1 = H1(2ka)/ka, R1 = 1 - J1(2ka)/ka (rayleigh1896, sec. 302), with 40 digits; script relations.py',
};
const a = 0.05;
const unitOfImpedance = (standardAir.density * standardAir.speedOfSound) / (Math.PI * a * a);

/** Reactance and resistance over ρc/S. */
function normalised(ka: number): { reactance: number; resistance: number } {
  const omega = (ka * standardAir.speedOfSound) / a;
  const load = radiationLoad({ diameter: si('length', 2 * a), frequency: si('frequency', omega / (2 * Math.PI)) });
  return { reactance: (omega * load.mass) / unitOfImpedance, resistance: load.resistance / unitOfImpedance };
}

const small = { ka: { value: 0.001, unit: '1' } };
const range = { ka: { value: [0.01, 0.05, 0.1, 0.2], unit: '1' } };

check('duct.radiation.mass-small', {
  formula: 'duct/radiationLoad',
  source,
  status: 'derived',
  kind: 'program',
  given: small,
  got: ({ ka }) => normalised(ka).reactance,
  expected: relations['duct.radiation.mass-small'],
  unit: '1',
  tolerance: { relative: 3e-7, why: 'the next term is 4(ka)²/15' },
});

check('duct.radiation.mass', {
  formula: 'duct/radiationLoad',
  source,
  status: 'derived',
  kind: 'program',
  given: range,
  got: ({ ka }) => normalised(ka).reactance,
  expected: relations['duct.radiation.mass'],
  unit: '1',
  tolerance: { relative: 0.011, why: 'the next term is 4(ka)²/15, 1.07 % at ka = 0.2' },
});

check('duct.radiation.resistance-small', {
  formula: 'duct/radiationLoad',
  source,
  status: 'derived',
  kind: 'program',
  given: small,
  got: ({ ka }) => normalised(ka).resistance,
  expected: relations['duct.radiation.resistance-small'],
  unit: '1',
  tolerance: { relative: 2e-7, why: 'the next term is (ka)²/6' },
});

check('duct.radiation.resistance', {
  formula: 'duct/radiationLoad',
  source,
  status: 'derived',
  kind: 'program',
  given: range,
  got: ({ ka }) => normalised(ka).resistance,
  expected: relations['duct.radiation.resistance'],
  unit: '1',
  tolerance: { relative: 0.007, why: 'the next term is (ka)²/6, 0.67 % at ka = 0.2' },
});

const end = { ka: { value: ranges.load.ka, unit: '1' } };
const exact = { key: 'scipy', locator: 'special.struve and special.j1; script ranges.py' };
check('duct.radiation.mass-end', {
  formula: 'duct/radiationLoad',
  source: exact,
  status: 'derived',
  kind: 'program',
  given: end,
  got: ({ ka }) => normalised(ka).reactance,
  expected: ranges.load.reactance,
  unit: '1',
  tolerance: { relative: 0.025, why: 'the 2.4 % that the range allows at its end: 4(ka)²/15' },
});
check('duct.radiation.resistance-end', {
  formula: 'duct/radiationLoad',
  source: exact,
  status: 'derived',
  kind: 'program',
  given: end,
  got: ({ ka }) => normalised(ka).resistance,
  expected: ranges.load.resistance,
  unit: '1',
  tolerance: { relative: 0.016, why: 'the 1.5 % that the range allows at its end: (ka)²/6' },
});
