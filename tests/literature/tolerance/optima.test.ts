/** Prices of limits and trade-off fronts, against a numeric library that finds them by other roads. */
import { shadowPrices, tradeOffFront } from '@airspring/core/tolerance';
import { check } from '../../ledger/check.js';
import fixture from './optima.json' with { type: 'json' };

const named = (numbers: readonly number[]) => Object.fromEntries(numbers.map((number, i) => [`x${i}`, number]));
const pricesOf = (objective: readonly number[], limits: readonly (readonly number[])[]) => {
  const { byLimit, left } = shadowPrices(named(objective), Object.fromEntries(limits.map((one, i) => [i, named(one)])));
  return [...Object.values(byLimit), left];
};

fixture.linear.forEach(({ objective, limits, prices }, i) => {
  check(`tolerance.shadow-prices.linear.${i}`, {
    formula: 'tolerance/shadowPrices',
    source: { key: 'scipy', locator: 'optimize.linprog (HiGHS): marginals of a linear programme; optima.py' },
    status: 'derived',
    kind: 'program',
    given: { limits: { value: limits.length, unit: '1' } },
    got: () => pricesOf(objective, limits),
    expected: [...prices, 0],
    unit: '1',
    tolerance: { absolute: 1e-12, why: 'rounding; normal equations square the condition' },
  });
});

const { objective, limits, multipliers, again } = fixture.smooth;
check('tolerance.shadow-prices.multipliers', {
  formula: 'tolerance/shadowPrices',
  source: { key: 'scipy', locator: 'optimize.minimize (SLSQP): multipliers of a smooth optimum; optima.py' },
  status: 'derived',
  kind: 'program',
  given: { limits: { value: limits.length, unit: '1' } },
  got: () => pricesOf(objective, limits),
  expected: [...multipliers, 0],
  unit: '1',
  tolerance: { absolute: 1e-6, why: 'the optimum is found to the root of its tolerance' },
});
check('tolerance.shadow-prices.again', {
  formula: 'tolerance/shadowPrices',
  source: { key: 'scipy', locator: 'optimize.minimize: optima with each limit eased and tightened by 10⁻⁴; optima.py' },
  status: 'derived',
  kind: 'program',
  given: { step: { value: 1e-4, unit: '1' } },
  got: () => pricesOf(objective, limits).slice(0, -1),
  expected: again,
  unit: '1',
  tolerance: { relative: 1e-5, why: 'a difference quotient over optima that are each found to about 10⁻¹⁰' },
});

fixture.loose.forEach(({ objective, limits, prices, left }, i) => {
  check(`tolerance.shadow-prices.left.${i}`, {
    formula: 'tolerance/shadowPrices',
    source: { key: 'scipy', locator: 'optimize.nnls: prices and residual where no optimum stands; optima.py' },
    status: 'derived',
    kind: 'program',
    given: { limits: { value: limits.length, unit: '1' } },
    got: () => pricesOf(objective, limits),
    expected: [...prices, left],
    unit: '1',
    tolerance: { absolute: 1e-13, why: 'rounding; normal equations square the condition' },
  });
});

for (const { points, front } of fixture.fronts) {
  const { length } = points[0] as number[];
  check(`tolerance.front.${length}.${points.length}`, {
    formula: 'tolerance/tradeOffFront',
    source: { key: 'numpy', locator: 'each point compared with every other; optima.py' },
    status: 'derived',
    kind: 'program',
    given: { points: { value: points.length, unit: '1' } },
    got: () => [...tradeOffFront(points)],
    expected: front,
    unit: '1',
    tolerance: { absolute: 0, why: 'places in a list' },
  });
}
