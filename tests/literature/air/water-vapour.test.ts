import { waterVapourFraction } from '@airspring/core/air';
import { check } from '../../ledger/check.js';
import { fixtures, state, statesOf } from './fixtures.js';

const humid = (table: typeof fixtures.density) => {
  const rows = table.humidity.flatMap((h, i) => (h > 0 ? [i] : []));
  const pick = (column: number[]) => rows.map((i) => column[i]!);
  const states = statesOf({
    temperature: pick(table.temperature),
    pressure: pick(table.pressure),
    humidity: pick(table.humidity),
  });
  return { states, expected: pick(table.vapourFraction) };
};

const { states, expected } = humid(fixtures.density);

check('air.water-vapour.program', {
  formula: 'air/waterVapourFraction',
  source: { key: 'coolprop', locator: 'humid-air module, output psi_w' },
  status: 'derived',
  kind: 'program',
  given: states,
  got: (given) => waterVapourFraction(state(given)),
  expected,
  unit: '1',
  tolerance: { relative: 1e-3, why: 'two fits of the vapour pressure and of the enhancement; 10⁻³ of x is 10⁻⁵ of ρ' },
});
