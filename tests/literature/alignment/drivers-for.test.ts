/** What to look for in a driver, against the tables of the alignments; and closed boxes against the equations in print. */
import {
  bandPass,
  butterworth,
  chebyshev,
  type DriversFor,
  driversFor,
  quasiThirdOrder,
} from '@airspring/core/alignment';
import {
  closedFamily,
  fourthOrderBandPassFamily,
  passiveRadiatorFamily,
  ventedFamily,
} from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
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

// Qtc = Q in the closed chamber, and the front chamber has (2 S Qts)² Vas; both edges are those of the low-pass, moved.
check('alignment.driversFor.band-pass', {
  formula,
  source: { key: 'geddes1989', locator: 'symmetrical fourth-order band-pass' },
  status: 'derived',
  kind: 'standard',
  given: { Qts: { value: [0.2, 0.3, 0.45], unit: '1' }, S: { value: Math.SQRT1_2, unit: '1' } },
  got: ({ Qts }) => {
    const [row] = found(bandPass({ Q: 0.6 }), fourthOrderBandPassFamily as never, {} as never, [Qts]).rows;
    const { rearVolume, frontVolume, frontTuning } = row!.box as Record<string, number>;
    return 1e6 * rearVolume! + 1e4 * frontVolume! + 1e2 * frontTuning! + (row!.upper! - row!.f3!);
  },
  expected: [0.2, 0.3, 0.45].map(
    (Q) => 1e6 / ((0.6 / Q) ** 2 - 1) + 1e4 * 2 * Q ** 2 + (1e2 * 0.6) / Q + Math.SQRT1_2 / Q,
  ),
  unit: '1, each number of the box with a weight of its own, and the width of the band',
  tolerance: { relative: 1e-10, why: 'the roots are found to their rounding' },
});
/** A radiator with the compliance of the driver and hardly any losses: delta is alpha. */
const alike = ({ Cms, Sd }: { readonly Cms: number; readonly Sd: number }) => ({
  radiator: {
    Sd: si('coneArea', Sd),
    Cms: si('compliance', Cms),
    Mms: si('mass', 1e-3),
    Rms: si('mechanicalResistance', 1e-6),
  },
});
check('alignment.driversFor.radiator', {
  formula,
  source: { key: 'small1974pr1', locator: 'maximally flat, with the compliance of the driver' },
  status: 'derived',
  kind: 'table',
  given: { 'delta/alpha': { value: 1, unit: '1' } },
  got: () => {
    const [row] = found(butterworth(4), passiveRadiatorFamily as never, alike as never).rows;
    const { netVolume, addedMass } = row!.box as Record<string, number>;
    return [row!.Qts, 1 / netVolume!, 1 / Math.sqrt(addedMass!), row!.f3!];
  },
  expected: [0.3031943589, 3.010327532, 0.6889315043, 1.441562758],
  unit: 'Qts, alpha, fp/fs, f3/fs',
  tolerance: { relative: 3e-7, why: 'the losses of the radiator are small, and not zero' },
});

test('rows rise with Qts, have a range, and no driver has a second-order shape in a vented box', () => {
  const { rows, Qts } = found(quasiThirdOrder, ventedFamily as never, { QL: 7 } as never);
  expect(rows.length).toBeGreaterThan(8);
  expect(rows.map((row) => row.Qts)).toEqual(rows.map((row) => row.Qts).sort((a, b) => a - b));
  expect([rows[0]!.Qts, rows.at(-1)!.Qts]).toEqual(Qts);
  const none = driversFor(butterworth(2), ventedFamily, { QL: 7 });
  expect(!none.ok && none.because[0]!.code).toBe('other-order');
});
