import { alongWalls, rectangularPiston } from '@airspring/core/duct';
import { check } from '../../ledger/check.js';
import ranges from './ranges.json' with { type: 'json' };

/** Radius of the circle of one square metre, so that lengths come out over √S. */
const radius = 1 / Math.sqrt(Math.PI);

check('end.rectangle', {
  formula: 'duct/rectangularPiston',
  source: { key: 'rayleigh1896', locator: 'sec. 302, the double integral in closed form, checked by quadrature' },
  status: 'derived',
  kind: 'table',
  given: {
    aspect: { value: [1, 1.5, 2, 3, 4, 5, 8, 10, 20, 50], unit: '1' },
  },
  got: ({ aspect }) => rectangularPiston({ radius, aspect }, 0),
  expected: [
    0.4732010044093, 0.468519414929, 0.4597620897243, 0.4407444806583, 0.4233805987098, 0.4082084030089,
    0.3729115644702, 0.3551882628424, 0.2993276070717, 0.2301127559503,
  ],
  unit: '1',
  tolerance: { relative: 2e-12, why: 'thirteen digits' },
});

check('end.rectangle.wall', {
  formula: 'duct/alongWalls',
  source: {
    key: 'rayleigh1896',
    locator: 'sec. 302 with the method of images: the rectangle of twice the height, of the table of aspect ratios',
  },
  status: 'derived',
  kind: 'table',
  given: {
    aspect: { value: [2, 4, 10, 20, 1, 6], unit: '1' },
  },
  got: ({ aspect }) => alongWalls('one')({ radius, aspect }, 0) / Math.SQRT2,
  expected: [0.4732010044093, 0.4597620897243, 0.4082084030089, 0.3551882628424, 0.4597620897243, 0.4407444806583],
  unit: '1',
  tolerance: { relative: 2e-12, why: 'thirteen digits' },
});

check('end.rectangle.corner', {
  formula: 'duct/alongWalls',
  source: { key: 'rayleigh1896', locator: 'sec. 302 with the method of images: the rectangle of twice both sides' },
  status: 'derived',
  kind: 'table',
  given: {
    aspect: { value: [1, 2, 5, 20], unit: '1' },
  },
  got: ({ aspect }) => alongWalls('two')({ radius, aspect }, 0) / 2,
  expected: [0.4732010044093, 0.4597620897243, 0.4082084030089, 0.2993276070717],
  unit: '1',
  tolerance: { relative: 2e-12, why: 'thirteen digits' },
});

check('end.rectangle.dynamic', {
  formula: 'duct/rectangularPiston',
  source: {
    key: 'rayleigh1896',
    locator: 'sec. 302, the double integral with cos(kr), by quadrature; script ranges.py',
  },
  status: 'derived',
  kind: 'table',
  given: {
    aspect: { value: ranges.rectangle.map(({ aspect }) => aspect), unit: '1' },
    kb: { value: ranges.rectangle.map(({ kb }) => kb), unit: 'k times the long side' },
  },
  got: ({ aspect, kb }) => rectangularPiston({ radius, aspect }, kb / Math.sqrt(aspect)),
  expected: ranges.rectangle.map(({ length }) => length),
  unit: '1',
  tolerance: { relative: 0.011, why: 'the static limit; 1.1 % too long for a square at the end of the range' },
});
