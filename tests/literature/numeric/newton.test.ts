import { newtonRoot } from '@airspring/core/numeric';
import { check } from '../../ledger/check.js';

const place = (residual: Parameters<typeof newtonRoot>[0], start: readonly number[]) => {
  const { ok, x } = newtonRoot(residual, start);
  return ok ? Array.from(x) : [Number.NaN];
};

check('numeric.newton.parabola-and-circle', {
  formula: 'numeric/newtonRoot',
  source: { key: 'dlmf', locator: '§3.8(vii): systems of equations; the root is that of a quadratic in x²' },
  status: 'derived',
  kind: 'standard',
  given: { radius: { value: 2, unit: '1' } },
  // y = x² and x² + y² = 4: y² + y − 4 = 0.
  got: () =>
    place(
      ([x, y], out) => {
        out[0] = y! - x! ** 2;
        out[1] = x! ** 2 + y! ** 2 - 4;
      },
      [1, 1],
    ),
  expected: [Math.sqrt((Math.sqrt(17) - 1) / 2), (Math.sqrt(17) - 1) / 2],
  unit: '1',
  tolerance: { relative: 1e-12, why: 'residuals of 1e-12 with slopes near 1' },
});
check('numeric.newton.valley', {
  formula: 'numeric/newtonRoot',
  source: { key: 'dlmf', locator: '§3.8(vii): a curved valley from which whole steps lead away' },
  status: 'derived',
  kind: 'standard',
  given: { slope: { value: 10, unit: '1' } },
  got: ({ slope }) =>
    place(
      ([x, y], out) => {
        out[0] = slope * (y! - x! ** 2);
        out[1] = 1 - x!;
      },
      [-1.2, 1],
    ),
  expected: [1, 1],
  unit: '1',
  tolerance: { relative: 1e-12, why: 'residuals of 1e-12 with slopes of 1 and more' },
});
