import type { DriverGroup } from '@airspring/core/driver';
import { totalQ, type ventedBox, ventedFamily, ventedRatios } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import { alignments, paperAir, physical, ventedOf } from './textbook.js';

const source = {
  key: 'small1973vented1',
  locator: 'alpha = Vas/Vab, h = fB/fS, QT with all resistances of the circuit',
};
const rows = alignments();
for (const [name, column, locator] of [
  ['alpha', 'alpha', 'system compliance ratio'],
  ['h', 'h', 'tuning ratio'],
  ['QT', 'Qts', 'total driver Q'],
] as const) {
  check(`enclosure.vented-ratios.${name}`, {
    formula: 'enclosure/ventedRatios',
    source: { ...source, locator: `${locator}: the boxes of nine alignments` },
    status: 'derived',
    kind: 'table',
    given: {
      QL: { value: rows.QL, unit: '1, 0 for no leak' },
      Qts: { value: rows.Qts, unit: '1' },
      h: { value: rows.h, unit: '1' },
      alpha: { value: rows.alpha, unit: '1' },
    },
    got: (row) => {
      const { spec, air } = ventedOf(row) as ReturnType<typeof ventedBox>;
      return ventedRatios(spec, air)[name];
    },
    expected: rows[column],
    unit: '1',
    tolerance: { relative: 1e-14, why: 'products of a few numbers in double precision' },
  });
}

/** Driver of the printed example, in a box of its table row. */
const printed = (sourceResistance: number) => ({
  drivers: physical({ fs: 60.9, Qes: 0.796, Qms: 3.35, Vas: 7.74e-3, Sd: 0.0087, Re: 6 }, paperAir),
  netVolume: si('volume', 28.15e-3),
  fb: si('frequency', 41.4),
  sourceResistance: si('resistance', sourceResistance),
});
check('enclosure.vented-ratios.printed', {
  formula: 'enclosure/ventedRatios',
  source: { key: 'student2023', locator: 'question 1: Qts of the driver from Qes and Qms' },
  status: 'seen',
  kind: 'example',
  given: { Qes: { value: 0.796, unit: '1' }, Qms: { value: 3.35, unit: '1' } },
  got: () => ventedRatios(printed(0), paperAir).QT,
  printed: '0.64',
  unit: '1',
});
check('enclosure.vented-ratios.source-resistance', {
  formula: 'enclosure/ventedRatios',
  source: { ...source, locator: 'Qe grows with (Rg + Re)/Re; QT = Qe Qm/(Qe + Qm)' },
  status: 'derived',
  kind: 'standard',
  given: { Rg: { value: [0, 0.6, 3, 6], unit: 'ohm' } },
  got: ({ Rg }) => ventedRatios(printed(Rg), paperAir).QT,
  // Qes 0.796 times 1, 1.1, 1.5, 2, beside Qms 3.35.
  expected: [0.6431741438, 0.6941641424, 0.8802596831, 1.0791582355],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'values to ten digits' },
});
check('enclosure.vented-ratios.group', {
  formula: 'enclosure/ventedRatios',
  source: { ...source, locator: 'Vas is rho c² Sd² Cms: two drivers in one box have twice the Vas' },
  status: 'derived',
  kind: 'standard',
  given: { drivers: { value: [1, 2], unit: '1, in parallel' } },
  got: ({ drivers: parallel }) => {
    const box = printed(0);
    const drivers = { driver: box.drivers, series: 1, parallel, isobaric: false, equivalent: box.drivers };
    return ventedRatios({ ...box, drivers: drivers as unknown as DriverGroup }, paperAir).alpha;
  },
  // 7.74 L, and 15.48 L, over 28.15 L.
  expected: [0.274955595, 0.5499111901],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'values to ten digits' },
});

check('enclosure.total-q', {
  formula: 'enclosure/totalQ',
  source: { ...source, locator: 'QT = Qe Qm/(Qe + Qm), with Qe times (Rg + Re)/Re' },
  status: 'derived',
  kind: 'standard',
  given: { Rg: { value: [0, 0.6, 3, 6], unit: 'ohm' } },
  got: ({ Rg }) => totalQ(ventedFamily.read(printed(Rg)), 2 * Math.PI * 60.9),
  expected: [0, 0.6, 3, 6].map((Rg) => 1 / (1 / 3.35 + 6 / (0.796 * (6 + Rg)))),
  unit: '1',
  tolerance: { relative: 1e-14, why: 'products of a few numbers in double precision' },
});
