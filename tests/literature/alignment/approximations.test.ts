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

const percents = (off: readonly number[]): string =>
  [Math.min(...off), Math.max(...off)].map((part) => `${(100 * part).toFixed(1).replace('-', '−')}`).join(' to ');

/** What one power leaves at worst that is fitted to these values themselves. */
function onePowerLeaves(Qts: readonly number[], values: readonly number[]): number {
  const [x, y] = [Qts.map(Math.log), values.map(Math.log)];
  const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
  const [mx, my] = [mean(x), mean(y)];
  const slope = mean(x.map((one, i) => (one - mx) * (y[i]! - my))) / mean(x.map((one) => (one - mx) ** 2));
  return Math.max(...x.map((one, i) => Math.abs(Math.exp(my + slope * (one - mx) - y[i]!) - 1)));
}

/** So tight that its losses do not show. */
const LOSSLESS = 1e6;

const all: readonly (readonly [keyof typeof table, VentedApproximation])[] = [['margolisSmall', margolisSmall]];
/** Why a rule is off, by its numbers. */
function whyOff(rule: VentedApproximation, Qts: readonly number[], part: (typeof parts)[number]): string {
  const off = (QL: number) => approximationErrors(rule, QL, Qts).map(({ error }) => error[part]);
  const exact = approximationErrors(rule, QL, Qts).map((one) => one.exact[part]);
  const [leaky, tight] = [off(QL), off(LOSSLESS)];
  const greatestOf = (list: readonly number[]) => Math.max(...list.map(Math.abs));
  const verdict =
    greatestOf(tight) < greatestOf(leaky)
      ? 'so it fits boxes without losses better, and the leaks make most of the difference'
      : 'so leaks do not explain it, and beyond what one power leaves it is open';
  return `the rule is ${percents(leaky)} % off boxes with a QL of ${QL}, and ${percents(tight)} % off boxes without losses; one power fitted to the exact values would be at most ${(100 * onePowerLeaves(Qts, exact)).toFixed(1)} % off; ${verdict}`;
}

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
        why: whyOff(rule, rows.Qts, part),
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

test('tuning and f3 of the rule are those of boxes without losses; its volume is that of neither', () => {
  const { Qts } = table.margolisSmall;
  const worst = (QL: number, part: (typeof parts)[number]) =>
    Math.max(...approximationErrors(margolisSmall, QL, Qts).map(({ error }) => Math.abs(error[part])));
  expect(worst(LOSSLESS, 'tuning')).toBeLessThan(0.5 * worst(QL, 'tuning'));
  expect(worst(LOSSLESS, 'f3')).toBeLessThan(worst(QL, 'f3'));
  expect(worst(LOSSLESS, 'volume')).toBeGreaterThan(worst(QL, 'volume'));
  const exact = approximationErrors(margolisSmall, QL, Qts).map((one) => one.exact.tuning);
  expect(onePowerLeaves(Qts, exact)).toBeLessThan(0.02);
});
