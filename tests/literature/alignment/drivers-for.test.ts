/** What to look for in a driver, against the tables of the alignments; and closed boxes against the equations in print. */
import { butterworth, chebyshev, type DriversFor, driversFor, quasiThirdOrder } from '@airspring/core/alignment';
import { closedFamily, ventedFamily } from '@airspring/core/enclosure';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import { alignments } from '../enclosure/textbook.js';

const source = { key: 'small1973vented1', locator: 'definition of the alignment' };
const formula = 'alignment/driversFor';
const losses = (QL: number) => (QL > 0 ? { QL } : {});
const found = (...args: Parameters<typeof driversFor<never, never>>): DriversFor => {
  const drivers = driversFor(...args);
  if (!drivers.ok) throw new Error(drivers.because[0]?.text);
  return drivers;
};

for (const [name, type] of [
  ['QB3', quasiThirdOrder],
  ['C4', chebyshev(4)],
] as const) {
  const rows = alignments(name);
  check(`alignment.driversFor.${name}`, {
    formula,
    source,
    status: 'derived',
    kind: 'table',
    given: { QL: { value: rows.QL, unit: '1, 0 for no leak' }, Qts: { value: rows.Qts, unit: '1' } },
    got: ({ QL, Qts }) => {
      const [row] = found(type, ventedFamily as never, losses(QL) as never, [Qts]).rows;
      return (row!.box.fb! * row!.f3!) / row!.box.netVolume!;
    },
    expected: rows.alpha.map((alpha, i) => alpha * rows.h[i]! * rows.f3[i]!),
    unit: '1, alpha × h × f3/fs',
    tolerance: { relative: 2e-9, why: 'a product of three numbers of ten digits' },
  });
}

const flat = alignments('B4');
check('alignment.driversFor.highest', {
  formula,
  source: { ...source, locator: 'B4 is the end of QB3 and of C4' },
  status: 'derived',
  kind: 'table',
  given: { QL: { value: flat.QL, unit: '1, 0 for no leak' } },
  got: ({ QL }) => found(quasiThirdOrder, ventedFamily as never, losses(QL) as never).Qts[1],
  expected: flat.Qts,
  unit: '1',
  tolerance: { relative: 2e-6, why: 'the end of the range is found by halving' },
});
check('alignment.driversFor.only', {
  formula,
  source,
  status: 'derived',
  kind: 'table',
  given: { QL: { value: flat.QL, unit: '1, 0 for no leak' } },
  got: ({ QL }) => found(butterworth(4), ventedFamily as never, losses(QL) as never).rows[0]!.Qts,
  expected: flat.Qts,
  unit: '1',
  tolerance: { relative: 2e-9, why: 'the table has ten digits' },
});

// Qtc = Qts √(1 + Vas/Vb), so that Vas/Vb = ½/Qts² − 1 where Qtc² = ½.
check('alignment.driversFor.closed', {
  formula,
  source: { key: 'small1972closed1', locator: 'Qtc = Qts √(α + 1)' },
  status: 'derived',
  kind: 'standard',
  given: { Qts: { value: [0.2, 0.35, 0.5, 0.65], unit: '1' } },
  got: ({ Qts }) => found(butterworth(2), closedFamily as never, {} as never, [Qts]).rows[0]!.box.netVolume!,
  expected: [0.2, 0.35, 0.5, 0.65].map((Q) => 1 / (0.5 / Q ** 2 - 1)),
  unit: '1',
  tolerance: { relative: 1e-11, why: 'the root is found to its rounding' },
});

test('rows rise with Qts, have a range, and no driver has a second-order shape in a vented box', () => {
  const { rows, Qts } = found(quasiThirdOrder, ventedFamily as never, { QL: 7 } as never);
  expect(rows.length).toBeGreaterThan(8);
  expect(rows.map((row) => row.Qts)).toEqual(rows.map((row) => row.Qts).sort((a, b) => a - b));
  expect([rows[0]!.Qts, rows.at(-1)!.Qts]).toEqual(Qts);
  const none = driversFor(butterworth(2), ventedFamily, { QL: 7 });
  expect(!none.ok && none.because[0]!.code).toBe('other-order');
});
