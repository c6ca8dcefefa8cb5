import { flared } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import rows from './flare.json' with { type: 'json' };

const rounded = rows.filter(([R]) => R! > 0);
const beyond = (R: number) => flared({ radius: si('length', R) })({ radius: 1 }, 0) + R;

check('end.flare.potential', {
  formula: 'duct/flared',
  source: {
    key: 'scipy',
    locator: 'Delaunay and spsolve: finite elements for the potential flow into a wide wall, flare.py',
  },
  status: 'derived',
  kind: 'program',
  given: { R: { value: rounded.map(([R]) => R!), unit: '1' } },
  got: ({ R }) => beyond(R),
  expected: rounded.map(([, length]) => length!),
  unit: '1',
  tolerance: { relative: 0.009, why: 'the root between two limits is an approximation; the elements are within 0.1 %' },
});

check('end.flare.sharp', {
  formula: 'duct/flared',
  source: { key: 'norris1989', locator: 'infinite flange, 0.82159: the limit of no flare' },
  status: 'seen',
  part: 'the limit of no flare',
  kind: 'table',
  given: { R: { value: [1e-5], unit: '1' } },
  got: ({ R }) => beyond(R),
  printed: ['0.82159'],
  unit: '1',
  tolerance: { relative: 5e-5, why: 'printed to five digits, and R = 1e-5' },
});

check('end.flare.wide', {
  formula: 'duct/flared',
  source: { key: 'rayleigh1896', locator: 'sec. 308: ∫dx/S over the throat of a wide flare, π √(aR/8)' },
  status: 'derived',
  kind: 'identity',
  given: { R: { value: [100, 500], unit: '1' } },
  got: ({ R }) => beyond(R),
  expected: [100, 500].map((R) => Math.PI * Math.sqrt(R / 8)),
  unit: '1',
  tolerance: { relative: 0.003, why: 'the sharp end still counts 0.3 % at R = 100' },
});
