/** A box of the tables is nearest to the alignment whose row it is, at no distance, with the parameter of that row. */
import {
  bessel,
  boomBox,
  butterworth,
  chebyshev,
  interOrder,
  nearestAlignments,
  quasiThirdOrder,
  subChebyshev,
  superBoomBox,
} from '@airspring/core/alignment';
import { checkIn } from '../../ledger/check.js';
import { fs, paperAir, ventedOf } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

const all = () => [
  butterworth(4),
  bessel(4),
  interOrder(),
  quasiThirdOrder,
  chebyshev(4),
  subChebyshev(4),
  boomBox,
  superBoomBox,
];
// B of the QB3 row follows from its own coefficients: B² = a3² − 2 a2.
const source = { key: 'small1973vented1', locator: 'definitions of the alignments: rows of their tables' };
for (const [name, row, parameter, expected] of [
  ['QB3', { QL: 7, Qts: 0.3, h: 1.314529038, alpha: 2.845201479 }, 'B', 2.47831288532],
  ['C4', { QL: 0, Qts: 0.4, h: 0.9614562644, alpha: 1.202426684 }, 'k', 0.8834046208],
  ['SC4', { QL: 0, Qts: 0.25, h: 1.0482969, alpha: 4.25617417 }, 'k', 4.309718014],
  ['SBB4', { QL: 0, Qts: 0.2, h: 1, alpha: 6.25 }, 'Q', 0.4],
] as const) {
  check(`alignment.nearest.${name}`, {
    formula: 'alignment/nearestAlignments',
    source,
    status: 'derived',
    kind: 'table',
    given: { Qts: { value: row.Qts, unit: '1' }, QL: { value: row.QL, unit: '1, 0 for no leak' } },
    got: () => {
      const [first] = nearestAlignments(ventedOf(row), all());
      return [
        first!.alignment === name ? 1 : 0,
        first!.parameters[parameter]!,
        first!.frequency / fs,
        1 + first!.deviation.rms,
        1 + first!.deviation.greatest,
      ];
    },
    expected: [1, expected, Math.sqrt(row.h), 1, 1],
    unit: '1, 1, 1, dB + 1, dB + 1',
    tolerance: { relative: 2e-6, why: 'a minimum is known to the root of its own rounding, some 1e-7 here' },
  });
}
