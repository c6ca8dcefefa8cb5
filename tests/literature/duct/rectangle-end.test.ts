import { alongWalls, rectangularPiston } from '@airspring/core/duct';
import { check } from '../../ledger/check.js';
import ranges from './ranges.json' with { type: 'json' };
import relations from './relations.json' with { type: 'json' };

/** Radius of the circle of one square metre, so that lengths come out over √S. */
const radius = 1 / Math.sqrt(Math.PI);

check('end.rectangle', {
  formula: 'duct/rectangularPiston',
  source: {
    key: 'mpmath',
    locator: 'sec. 302 (rayleigh1896): the double integral in polar coordinates, by quadrature; script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    aspect: { value: [1, 1.5, 2, 3, 4, 5, 8, 10, 20, 50], unit: '1' },
  },
  got: ({ aspect }) => rectangularPiston({ radius, aspect }, 0),
  expected: relations['end.rectangle'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('end.rectangle.wall', {
  formula: 'duct/alongWalls',
  source: {
    key: 'mpmath',
    locator:
      'sec. 302 with the method of images: the rectangle of twice the height, of the table of aspect ratios (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    aspect: { value: [2, 4, 10, 20, 1, 6], unit: '1' },
  },
  got: ({ aspect }) => alongWalls('one')({ radius, aspect }, 0) / Math.SQRT2,
  expected: relations['end.rectangle.wall'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('end.rectangle.corner', {
  formula: 'duct/alongWalls',
  source: {
    key: 'mpmath',
    locator:
      'sec. 302 with the method of images: the rectangle of twice both sides (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    aspect: { value: [1, 2, 5, 20], unit: '1' },
  },
  got: ({ aspect }) => alongWalls('two')({ radius, aspect }, 0) / 2,
  expected: relations['end.rectangle.corner'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('end.rectangle.dynamic', {
  formula: 'duct/rectangularPiston',
  source: {
    key: 'scipy',
    locator: 'sec. 302, the double integral with cos(kr), by quadrature (rayleigh1896); script ranges.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    aspect: { value: ranges.rectangle.map(({ aspect }) => aspect), unit: '1' },
    kb: { value: ranges.rectangle.map(({ kb }) => kb), unit: 'k times the long side' },
  },
  got: ({ aspect, kb }) => rectangularPiston({ radius, aspect }, kb / Math.sqrt(aspect)),
  expected: ranges.rectangle.map(({ length }) => length),
  unit: '1',
  tolerance: { relative: 0.011, why: 'the static limit; 1.1 % too long for a square at the end of the range' },
});
