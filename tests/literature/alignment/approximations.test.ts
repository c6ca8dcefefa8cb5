/** Rules of thumb for vented boxes, against what was worked out apart; and what they are off, against the exact boxes. */
import { approximationErrors, margolisSmall, type VentedApproximation } from '@airspring/core/alignment';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import table from './approximations.json';

const QL = 7;
const parts = ['volume', 'tuning', 'f3'] as const;
const columns = { volume: 'Vb_over_Vas', tuning: 'h', f3: 'f3_over_fs' } as const;
const errors = { volume: 'error_Vb', tuning: 'error_h', f3: 'error_f3' } as const;
const locators = {
  margolisSmall: {
    volume: 'Vb = 15 Qts^2.87 Vas',
    tuning: 'fb = 0.42 Qts^−0.9 fs',
    f3: 'f3 = 0.26 Qts^−1.4 fs',
  },
} as const;
/** What a fit of one power over the whole range leaves, at its worst. */
const greatest = {
  margolisSmall: { volume: 0.26, tuning: 0.09, f3: 0.13 },
} as const;

const all: readonly (readonly [keyof typeof table, VentedApproximation])[] = [['margolisSmall', margolisSmall]];
for (const [name, rule] of all) {
  const rows = table[name];
  const [key] = rule.sources as readonly [string];
  for (const part of parts) {
    check(`alignment.${name}.${part}`, {
      formula: `alignment/${name}`,
      source: { key, locator: locators[name][part] },
      status: 'derived',
      kind: 'table',
      given: { Qts: { value: rows.Qts, unit: '1' } },
      got: ({ Qts }) => rule.of(Qts)[part],
      expected: rows[`approx_${columns[part]}`],
      unit: '1',
      tolerance: { relative: 1e-9, why: 'the table has ten digits' },
    });
    check(`alignment.${name}.${part}.error`, {
      formula: 'alignment/approximationErrors',
      source: { key: 'small1973vented1', locator: 'exact QB3 and C4 with a QL of 7' },
      status: 'derived',
      kind: 'table',
      given: { Qts: { value: rows.Qts, unit: '1' } },
      got: ({ Qts }) => 1 + approximationErrors(rule, QL, [Qts])[0]!.error[part],
      expected: rows[errors[part]].map((percent) => 1 + percent / 100),
      unit: '1, told ÷ exact',
      tolerance: { relative: 2e-10, why: 'the table has ten digits of a percentage' },
    });
    // What the rule tells, with three digits, stands beside the exact box: the page of disagreements lists it.
    check(`alignment.${name}.${part}.told`, {
      formula: 'alignment/driversFor',
      source: { key, locator: `${locators[name][part]}; for Qts of ${rows.Qts.map((Q) => Q.toFixed(2)).join(', ')}` },
      status: 'practice',
      kind: 'table',
      given: { Qts: { value: rows.Qts, unit: '1' } },
      got: ({ Qts }) => approximationErrors(rule, QL, [Qts])[0]!.exact[part],
      expected: rows.Qts.map((Qts) => Number(rule.of(Qts)[part].toPrecision(3))),
      unit: '1, multiple of Vas or fs',
      tolerance: {
        relative: greatest[name][part],
        why: 'one power stands for QB3, B4 and C4 over the whole range, for a pocket calculator; here each is solved with a QL of 7',
      },
    });
  }
}

test('each error is one of an alignment that suits, and outside the range of all there is none', () => {
  const rows = approximationErrors(margolisSmall);
  expect(rows).toHaveLength(9);
  expect(rows.map(({ alignment }) => alignment)).toEqual([...Array(5).fill('QB3'), ...Array(4).fill('C4')]);
  expect(approximationErrors(margolisSmall, 7, [1.4])).toEqual([]);
});
