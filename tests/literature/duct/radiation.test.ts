import { standardAir } from '@airspring/core/air';
import {
  compileRadiation,
  flanged,
  flangedRadiation,
  pistonRadiation,
  type Radiation,
  smallOpening,
  unflanged,
  unflangedRadiation,
} from '@airspring/core/duct';
import { complexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import relations from './relations.json' with { type: 'json' };
import integral from './unflanged.json' with { type: 'json' };

/** Real or imaginary part over ρc/S. */
function part(radiation: Radiation, ka: number, at: 0 | 1): number {
  const out = new Float64Array(2);
  radiation({ radius: 0.05 }, ka / 0.05, out);
  return out[at]!;
}

const exactUnflanged = { key: 'scipy', locator: 'quad of levine1948, eqs. VI.4 and VI.5; script unflanged.py' };
const exactFlanged = {
  key: 'norris1989',
  locator: 'the same boundary-value problem, solved anew by a Galerkin method',
};

check('duct.radiation.piston.re', {
  formula: 'duct/pistonRadiation',
  source: { key: 'mpmath', locator: 'sec. 302, evaluated with 40 digits (rayleigh1896); script relations.py' },
  status: 'derived',
  kind: 'program',
  given: {
    ka: { value: [0.001, 0.01, 0.05, 0.1, 0.2, 0.5, 1.0, 1.5, 2.0, 3.0, 5.0, 8.0, 10.0, 15.0, 20.0], unit: '1' },
  },
  got: ({ ka }) => part(pistonRadiation, ka, 0),
  expected: relations['duct.radiation.piston.re'],
  unit: '1',
  tolerance: {
    relative: 1e-14,
    why: 'Bessel and Struve functions to rounding',
  },
});

check('duct.radiation.piston.im', {
  formula: 'duct/pistonRadiation',
  source: { key: 'mpmath', locator: 'sec. 302, evaluated with 40 digits (rayleigh1896); script relations.py' },
  status: 'derived',
  kind: 'program',
  given: {
    ka: { value: [0.001, 0.01, 0.05, 0.1, 0.2, 0.5, 1.0, 1.5, 2.0, 3.0, 5.0, 8.0, 10.0, 15.0, 20.0], unit: '1' },
  },
  got: ({ ka }) => part(pistonRadiation, ka, 1),
  expected: relations['duct.radiation.piston.im'],
  unit: '1',
  tolerance: {
    relative: 1e-14,
    why: 'Bessel and Struve functions to rounding',
  },
});

check('duct.radiation.unflanged.re', {
  formula: 'duct/unflangedRadiation',
  source: exactUnflanged,
  status: 'derived',
  kind: 'program',
  given: { ka: { value: integral.ka, unit: '1' } },
  got: ({ ka }) => part(unflangedRadiation, ka, 0),
  expected: integral.resistance,
  unit: '1',
  tolerance: {
    relative: 0.02,
    why: 'the fits are told to be within 1 % of the reflection, which is up to 2 % of the resistance; duct.radiation.unflanged.reflection shows that it is the fit, not its code',
  },
});

check('duct.radiation.unflanged.im', {
  formula: 'duct/unflangedRadiation',
  source: exactUnflanged,
  status: 'derived',
  kind: 'program',
  given: { ka: { value: integral.ka, unit: '1' } },
  got: ({ ka }) => part(unflangedRadiation, ka, 1),
  expected: integral.reactance,
  unit: '1',
  tolerance: {
    relative: 0.006,
    why: 'the fits are told to be within 1 % of the reflection, which is up to 2 % of the resistance; duct.radiation.unflanged.reflection shows that it is the fit, not its code',
  },
});

check('duct.radiation.flanged.re', {
  formula: 'duct/flangedRadiation',
  source: exactFlanged,
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [0.05, 0.1, 0.2, 0.3, 0.5, 0.75, 1], unit: '1' } },
  got: ({ ka }) => part(flangedRadiation, ka, 0),
  expected: [0.001249404, 0.004990464, 0.01984769, 0.04423124, 0.1191283, 0.2521733, 0.4112515],
  unit: '1',
  tolerance: {
    relative: 0.011,
    why: 'the fit is this near up to ka = 1; duct.radiation.flanged.fit shows that it is the fit, not its code',
  },
});

check('duct.radiation.flanged.im', {
  formula: 'duct/flangedRadiation',
  source: exactFlanged,
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [0.05, 0.1, 0.2, 0.3, 0.5, 0.75, 1], unit: '1' } },
  got: ({ ka }) => part(flangedRadiation, ka, 1),
  expected: [0.04105346, 0.0819256, 0.1624073, 0.2400367, 0.3814964, 0.5211419, 0.6090255],
  unit: '1',
  tolerance: {
    relative: 0.012,
    why: 'the fit is this near up to ka = 1; duct.radiation.flanged.fit shows that it is the fit, not its code',
  },
});

check('duct.radiation.unflanged.reflection', {
  formula: 'duct/unflangedRadiation',
  source: { key: 'dalmont2001', locator: 'fit of the modulus of the reflection, read second-hand and recomputed' },
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [0.05, 0.1, 0.2, 0.3, 0.5, 0.75, 1, 1.5, 2, 3], unit: '1' } },
  got: ({ ka }) => {
    const [r, x] = [part(unflangedRadiation, ka, 0), part(unflangedRadiation, ka, 1)];
    return Math.hypot(r - 1, x) / Math.hypot(r + 1, x);
  },
  expected: [
    0.9987636493, 0.9951179503, 0.9810720775, 0.9589954804, 0.896179402, 0.7967846821, 0.6905940594, 0.4968694097,
    0.3472584856, 0.1579341317,
  ],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'closed formula, ten digits' },
});

check('duct.radiation.flanged.fit', {
  formula: 'duct/flangedRadiation',
  source: { key: 'silva2009', locator: 'rational fit, read second-hand and recomputed' },
  status: 'derived',
  kind: 'table',
  given: {
    ka: { value: [0.05, 0.1, 0.2, 0.3, 0.5, 0.75, 1, 1.5, 2, 3], unit: '1' },
  },
  got: ({ ka }) => part(flangedRadiation, ka, 1),
  expected: [
    0.0410501081, 0.08192385, 0.162436541, 0.240128255, 0.381513688, 0.519224896, 0.60178364, 0.612127545, 0.513792266,
    0.318224024,
  ],
  unit: '1',
  tolerance: { relative: 1e-8, why: 'closed formula, nine digits' },
});

check('duct.radiation.flanged.fit-resistance', {
  formula: 'duct/flangedRadiation',
  source: { key: 'silva2009', locator: 'rational fit, read second-hand and recomputed' },
  status: 'derived',
  kind: 'table',
  given: {
    ka: { value: [0.05, 0.1, 0.2, 0.3, 0.5, 0.75, 1, 1.5, 2, 3], unit: '1' },
  },
  got: ({ ka }) => part(flangedRadiation, ka, 0),
  expected: [
    0.00124953897, 0.00499260391, 0.0198804426, 0.0443849884, 0.120046986, 0.254774009, 0.41365407, 0.709011607,
    0.895064127, 1.0218017,
  ],
  unit: '1',
  tolerance: { relative: 1e-8, why: 'closed formula, nine digits' },
});

check('duct.radiation.flanged.beyond.re', {
  formula: 'duct/flangedRadiation',
  source: exactFlanged,
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [1.5, 2, 2.5, 3], unit: '1' } },
  got: ({ ka }) => part(flangedRadiation, ka, 0),
  expected: [0.7246271, 0.9365499, 1.027011, 1.038023],
  unit: '1',
  tolerance: { relative: 0.07, why: 'beyond the stated range, as the docstring says' },
});

check('duct.radiation.flanged.beyond.im', {
  formula: 'duct/flangedRadiation',
  source: exactFlanged,
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [1.5, 2, 2.5, 3], unit: '1' } },
  got: ({ ka }) => part(flangedRadiation, ka, 1),
  expected: [0.6284905, 0.5107538, 0.3629472, 0.2442689],
  unit: '1',
  tolerance: { relative: 0.31, why: 'beyond the stated range, as the docstring says' },
});

check('duct.radiation.small.half', {
  formula: 'duct/smallOpening',
  source: exactFlanged,
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [0.05, 0.1, 0.2, 0.3], unit: '1' } },
  got: ({ ka }) => part(smallOpening(flanged, 2 * Math.PI), ka, 0),
  expected: [0.001249404, 0.004990464, 0.01984769, 0.04423124],
  unit: '1',
  tolerance: { relative: 0.02, why: 'the next term is (ka)²/6 of it or so' },
});

check('duct.radiation.small.free', {
  formula: 'duct/smallOpening',
  source: { key: 'levine1948', locator: 'eq. VI.5, evaluated anew with 25 digits' },
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [0.01, 0.05, 0.1, 0.2, 0.3], unit: '1' } },
  got: ({ ka }) => part(smallOpening(unflanged, 4 * Math.PI), ka, 0),
  expected: [2.49962632e-5, 0.000623507516, 0.00248200447, 0.0098067161, 0.0217949859],
  unit: '1',
  tolerance: { relative: 0.04, why: 'the next terms of ka are left out: 3.2 % at ka = 0.3' },
});

check('duct.radiation.small.mass', {
  formula: 'duct/smallOpening',
  source: exactFlanged,
  status: 'derived',
  kind: 'table',
  given: { ka: { value: [0.05, 0.1, 0.2, 0.3], unit: '1' } },
  got: ({ ka }) => part(smallOpening(flanged), ka, 1),
  expected: [0.04105346, 0.0819256, 0.1624073, 0.2400367],
  unit: '1',
  tolerance: { relative: 0.025, why: 'the angle kΔℓ for its tangent: a third of its square' },
});

const column = (ka: number) => {
  const out = complexColumn(1);
  const air = { ...standardAir, speedOfSound: si('speed', 340), density: si('density', 1.2) };
  compileRadiation({ diameter: '20 cm', radiation: pistonRadiation }, air)(
    Float64Array.of((ka * 3400) / (2 * Math.PI)),
    out,
  );
  return out;
};

check('duct.radiation.column.re', {
  formula: 'duct/compileRadiation',
  source: {
    key: 'mpmath',
    locator: 'sec. 302, piston of 0.1 m in air of 1.2 kg/m³ and 340 m/s (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: { ka: { value: [0.01, 0.5, 3, 20], unit: '1' } },
  got: ({ ka }) => (column(ka).re[0]! * Math.PI * 0.01) / 408,
  expected: relations['duct.radiation.column.re'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'rounding' },
});

check('duct.radiation.column.im', {
  formula: 'duct/compileRadiation',
  source: {
    key: 'mpmath',
    locator: 'sec. 302, piston of 0.1 m in air of 1.2 kg/m³ and 340 m/s (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: { ka: { value: [0.01, 0.5, 3], unit: '1' } },
  got: ({ ka }) => (column(ka).im[0]! * Math.PI * 0.01) / 408,
  expected: relations['duct.radiation.column.im'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'rounding' },
});
