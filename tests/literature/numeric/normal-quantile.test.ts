import { normalQuantile } from '@airspring/core/numeric';
import { check } from '../../ledger/check.js';
import fixture from './normal-quantile.json' with { type: 'json' };

check('numeric.normal-quantile', {
  formula: 'numeric/normalQuantile',
  source: { key: 'scipy', locator: 'stats.norm.ppf; normal-quantile.py' },
  status: 'derived',
  kind: 'program',
  given: { u: { value: fixture.u, unit: '1' } },
  got: ({ u }) => normalQuantile(u),
  expected: fixture.z,
  unit: '1',
  tolerance: { relative: 4e-15, why: 'a few units of the last digit, of both' },
});
