import { type EndCorrection, mutualLength, pistonInFlange, withNeighbours } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import ranges from './ranges.json' with { type: 'json' };
import relations from './relations.json' with { type: 'json' };

/** An end without anything of its own. */
const alone: EndCorrection = Object.assign(() => 0, { sources: ['own'] });

check('end.mutual.pistons', {
  formula: 'duct/mutualLength',
  source: {
    key: 'mpmath',
    locator:
      'mutual radiation impedance of pistons, static limit (pritchard1960), by elliptic integrals; script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    distance: { value: [2.0001, 2.2, 2.5, 3, 4, 5, 6, 8, 10, 20], unit: '1' },
  },
  got: ({ distance }) => mutualLength({ diameter: '2 m', distance: si('length', distance) }),
  expected: relations['end.mutual.pistons'],
  unit: 'm',
  tolerance: { relative: 1e-7, why: 'adaptive quadrature of the double integral' },
});

check('end.mutual.far', {
  formula: 'duct/mutualLength',
  source: {
    key: 'mpmath',
    locator:
      'mutual radiation impedance of pistons, static limit (pritchard1960), by elliptic integrals; script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    distance: { value: [50, 200], unit: '1' },
  },
  got: ({ distance }) => mutualLength({ diameter: '2 m', distance: si('length', distance) }),
  expected: relations['end.mutual.far'],
  unit: 'm',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('end.neighbours', {
  formula: 'duct/withNeighbours',
  source: {
    key: 'mpmath',
    locator:
      '8/(3π) and the mutual term, static limit, of one neighbour and of two (pritchard1960); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    distance: { value: [2.2, 3, 5, 20], unit: '1' },
    count: { value: [1, 2, 2, 1], unit: '1' },
  },
  got: ({ distance, count }) =>
    withNeighbours(
      pistonInFlange,
      Array.from({ length: count }, () => si('length', distance)),
    )({ radius: 1 }, 0),
  expected: relations['end.neighbours'],
  unit: 'm',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('end.mutual.dynamic', {
  formula: 'duct/mutualLength',
  source: {
    key: 'scipy',
    locator: 'mutual reactance at kd from 0.01 to 0.5, by quadrature (pritchard1960); script ranges.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    distance: { value: ranges.mutual.map(({ distance }) => distance), unit: '1' },
    kd: { value: ranges.mutual.map(({ kd }) => kd), unit: '1' },
  },
  // The static limit is 1/cos(kd) too long, 14 % at kd = 0.5: with that factor put in, little is left.
  got: ({ distance, kd }) => mutualLength({ diameter: '2 m', distance: si('length', distance) }) * Math.cos(kd),
  expected: ranges.mutual.map(({ length }) => length),
  unit: 'm',
  tolerance: { relative: 0.003, why: 'the openings are not small against their distance: 0.19 % at 2.5 radii' },
});

for (const [id, kd, tolerance] of [
  [
    'end.neighbours.dynamic.low',
    0.01,
    { relative: 1e-6, why: 'the cosine of the centres for that of the whole: less than (kd)² of the 4 %' },
  ],
  ['end.neighbours.dynamic.middle', 0.5, { relative: 0.003, why: 'the 0.3 % that the docstring states' }],
  [
    'end.neighbours.dynamic',
    1,
    { relative: 0.04, why: 'the 4 % that the docstring states where openings nearly touch' },
  ],
] as const) {
  const rows = ranges.neighbours.filter((row) => row.kd === kd);
  check(id, {
    formula: 'duct/withNeighbours',
    source: {
      key: 'scipy',
      locator: `mutual reactance at kd = ${kd} (pritchard1960), by quadrature; script ranges.py`,
    },
    status: 'derived',
    kind: 'program',
    given: { distance: { value: rows.map(({ distance }) => distance), unit: '1' }, kd: { value: kd, unit: '1' } },
    got: ({ distance, kd }) => withNeighbours(alone, [si('length', distance)])({ radius: 1 }, kd / distance),
    expected: rows.map(({ length }) => length),
    unit: 'm',
    tolerance,
  });
}
