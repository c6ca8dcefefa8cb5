import { type EndCorrection, mutualLength, pistonInFlange, withNeighbours } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import ranges from './ranges.json' with { type: 'json' };

/** An end without anything of its own. */
const alone: EndCorrection = Object.assign(() => 0, { sources: ['own'] });

check('end.mutual.pistons', {
  formula: 'duct/mutualLength',
  source: {
    key: 'pritchard1960',
    locator: 'mutual radiation impedance of pistons, static limit, evaluated anew by quadrature',
  },
  status: 'derived',
  kind: 'table',
  given: {
    distance: { value: [2.0001, 2.2, 2.5, 3, 4, 5, 6, 8, 10, 20], unit: '1' },
  },
  got: ({ distance }) => mutualLength({ diameter: '2 m', distance: si('length', distance) }),
  expected: [
    0.272184235, 0.242468264, 0.209608227, 0.171877776, 0.127079381, 0.101039863, 0.0839277511, 0.0627478008,
    0.0501261893, 0.0250156618,
  ],
  unit: 'm',
  tolerance: { relative: 1e-7, why: 'adaptive quadrature of the double integral' },
});

check('end.mutual.far', {
  formula: 'duct/mutualLength',
  source: { key: 'pritchard1960', locator: 'first-order term: point sources, a/(2x)' },
  status: 'derived',
  kind: 'table',
  given: {
    distance: { value: [50, 200], unit: '1' },
  },
  got: ({ distance }) => mutualLength({ diameter: '2 m', distance: si('length', distance) }),
  expected: [0.01, 0.0025],
  unit: 'm',
  tolerance: { relative: 2e-4, why: 'the next term is 1/(4x²) of it' },
});

check('end.neighbours', {
  formula: 'duct/withNeighbours',
  source: { key: 'pritchard1960', locator: '8/(3π) and the mutual term, static limit, of one neighbour and of two' },
  status: 'derived',
  kind: 'table',
  given: {
    distance: { value: [2.2, 3, 5, 20], unit: '1' },
    count: { value: [1, 2, 2, 1], unit: '1' },
  },
  got: ({ distance, count }) =>
    withNeighbours(
      pistonInFlange,
      Array.from({ length: count }, () => si('length', distance)),
    )({ radius: 1 }, 0),
  expected: [1.091294627156775, 1.192581915156775, 1.050906089156775, 0.873842024956775],
  unit: 'm',
  tolerance: { relative: 1e-8, why: 'nine digits' },
});

check('end.mutual.dynamic', {
  formula: 'duct/mutualLength',
  source: { key: 'pritchard1960', locator: 'mutual reactance at kd from 0.01 to 0.5, by quadrature; script ranges.py' },
  status: 'derived',
  kind: 'table',
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

check('end.neighbours.dynamic', {
  formula: 'duct/withNeighbours',
  source: { key: 'pritchard1960', locator: 'mutual reactance at kd from 0.01 to 1, by quadrature; script ranges.py' },
  status: 'derived',
  kind: 'table',
  given: {
    distance: { value: ranges.neighbours.map(({ distance }) => distance), unit: '1' },
    kd: { value: ranges.neighbours.map(({ kd }) => kd), unit: '1' },
  },
  got: ({ distance, kd }) => withNeighbours(alone, [si('length', distance)])({ radius: 1 }, kd / distance),
  expected: ranges.neighbours.map(({ length }) => length),
  unit: 'm',
  tolerance: { relative: 0.04, why: 'the 4 % that the docstring states for openings that nearly touch at kd = 1' },
});
