import { besselJ0, besselJ1, struveH0, struveH1 } from '@airspring/core/numeric';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import { fixtures, worst } from './fixtures.js';
import print from './printed.json' with { type: 'json' };

const { x, J0, J1, H0, H1 } = fixtures.special;
/** Near a zero the error is measured by the height of the waves; for small x by the value. */
const wave = (i: number) => (x[i]! > 2 ? Math.sqrt(2 / (Math.PI * x[i]!)) : 0);
const tolerance = 4e-15;

test.each([
  ['J0', besselJ0, J0],
  ['J1', besselJ1, J1],
  ['H0', struveH0, H0],
  ['H1', struveH1, H1],
] as const)('%s agrees with 40-digit arithmetic', (_, f, expected) => {
  expect(worst(x.map(f), expected, wave)).toBeLessThan(tolerance);
});

const argument = {
  value: [1e-8, 0.0001, 0.01, 0.1, 0.5, 1.0, 1.5, 2.0, 3.0, 5.0, 8.0, 10.0, 15.0, 20.0, 30.0, 50.0, 100.0],
  unit: '1',
};

check('bessel-j.J0', {
  formula: 'numeric/besselJ0',
  source: { key: 'dlmf', locator: '10.2.2, the series in 40-digit arithmetic' },
  status: 'derived',
  kind: 'program',
  given: { x: argument },
  got: ({ x }) => besselJ0(x),
  expected: [
    1.0, 0.9999999975, 0.9999750001562495, 0.99750156206604, 0.9384698072408129, 0.7651976865579666, 0.5118276717359181,
    0.2238907791412357, -0.2600519549019334, -0.1775967713143383, 0.1716508071375539, -0.2459357644513483,
    -0.01422447282678077, 0.1670246643405832, -0.08636798358104021, 0.05581232766925182, 0.01998585030422312,
  ],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'rounding, a few times more of it where the wave crosses zero' },
});

check('bessel-j.J1', {
  formula: 'numeric/besselJ1',
  source: { key: 'dlmf', locator: '10.2.2, the series in 40-digit arithmetic' },
  status: 'derived',
  kind: 'program',
  given: { x: argument },
  got: ({ x }) => besselJ1(x),
  expected: [
    5e-9, 4.99999999375e-5, 0.004999937500260416, 0.049937526036242, 0.2422684576748739, 0.4400505857449335,
    0.5579365079100996, 0.5767248077568734, 0.3390589585259365, -0.3275791375914652, 0.2346363468539146,
    0.04347274616886144, 0.2051040386135227, 0.06683312417585005, -0.1187510626166229, -0.09751182812517514,
    -0.07714535201411216,
  ],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'rounding, a few times more of it where the wave crosses zero' },
});

check('struve-h.H0', {
  formula: 'numeric/struveH0',
  source: { key: 'dlmf', locator: '11.2.1, the series in 40-digit arithmetic' },
  status: 'derived',
  kind: 'program',
  given: { x: argument },
  got: ({ x }) => struveH0(x),
  expected: [
    6.366197723675813e-9, 6.36619771660226e-5, 0.006366126988428492, 0.06359126999493356, 0.3095559145837547,
    0.5686566270482879, 0.7367234656043998, 0.7908588495080959, 0.5743061488143983, -0.1852168157766849,
    0.3019881117101378, 0.1187436836874613, 0.2477238309811512, 0.09439369808132345, -0.09609842155416211,
    -0.085337674826119, -0.07087875168964734,
  ],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'rounding, a few times more of it where the wave crosses zero' },
});

check('struve-h.H1', {
  formula: 'numeric/struveH1',
  source: { key: 'dlmf', locator: '11.2.1, the series in 40-digit arithmetic' },
  status: 'derived',
  kind: 'program',
  given: { x: argument },
  got: ({ x }) => struveH1(x),
  expected: [
    2.122065907891938e-17, 2.122065906477227e-9, 2.122051760826305e-5, 0.002120651601425554, 0.05217374424234107,
    0.1984573362019444, 0.4102884759694156, 0.6467637282835621, 1.02010956918645, 0.8078119457940645,
    0.4881160461214211, 0.8918324920945381, 0.660487298511966, 0.4726881842910429, 0.72175037834699, 0.5800784479454419,
    0.6163111032720134,
  ],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'rounding, a few times more of it where the wave crosses zero' },
});

// Arguments as printed in the tables; zero, where nothing is computed, is left out.
const read = { status: 'seen', kind: 'table' } as const;
check('bessel-j.J0.table', { ...print.J0, ...read, formula: 'numeric/besselJ0', got: ({ x }) => besselJ0(x) });
check('bessel-j.J1.table', { ...print.J1, ...read, formula: 'numeric/besselJ1', got: ({ x }) => besselJ1(x) });
check('struve-h.H0.table', { ...print.H0, ...read, formula: 'numeric/struveH0', got: ({ x }) => struveH0(x) });
check('struve-h.H1.table', { ...print.H1, ...read, formula: 'numeric/struveH1', got: ({ x }) => struveH1(x) });
check('struve-h.H1.shifted', {
  ...print['H1 rest'],
  ...read,
  formula: 'numeric/struveH1',
  got: ({ x }) => struveH1(x),
});
