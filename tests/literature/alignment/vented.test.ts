/** Boxes of alignments, against the tables that were worked out apart from the network. */
import { butterworth, quasiThirdOrder, solveAlignment } from '@airspring/core/alignment';
import { ventedFamily, ventedRatios } from '@airspring/core/enclosure';
import { check } from '../../ledger/check.js';
import { type AlignmentRow, alignments, fs, paperAir, physical, split } from '../enclosure/textbook.js';

const source = { key: 'small1973vented1', locator: 'definition of the alignment' };
const tolerance = { relative: 2e-9, why: 'the table has ten digits' };

/** alpha, h or f3/fs of the box that an alignment gives the driver of a row. */
const boxOf = (type: typeof quasiThirdOrder, { QL, Qts }: Pick<AlignmentRow, 'QL' | 'Qts'>, addResistance = false) => {
  const drivers = physical({ fs, ...split(Qts), Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
  const found = solveAlignment(
    type,
    ventedFamily,
    { drivers, ...(QL > 0 && { QL }) },
    { air: paperAir, addResistance },
  );
  if (!found.ok) throw new Error(found.because[0]?.text);
  const { alpha, h, QT } = ventedRatios(found.system.spec, paperAir);
  return { alpha, h, QT, f3: (found.f3.ok ? found.f3.frequency : Number.NaN) / fs };
};

const quasi = alignments('QB3');
const flat = alignments('B4');
for (const quantity of ['alpha', 'h', 'f3'] as const) {
  check(`alignment.quasi-third-order.${quantity}`, {
    formula: 'alignment/quasiThirdOrder',
    source,
    status: 'derived',
    kind: 'table',
    given: { QL: { value: quasi.QL, unit: '1, 0 for no leak' }, Qts: { value: quasi.Qts, unit: '1' } },
    got: (row) => boxOf(quasiThirdOrder, row)[quantity],
    expected: quasi[quantity],
    unit: '1',
    tolerance,
  });
}
for (const [quantity, column] of [
  ['alpha', 'alpha'],
  ['h', 'h'],
  ['f3', 'f3'],
  ['QT', 'Qts'],
] as const) {
  // The driver has a lower quality factor than the alignment takes; the resistance that is added raises it.
  check(`alignment.butterworth.${quantity}`, {
    formula: 'alignment/butterworth',
    source,
    status: 'derived',
    kind: 'table',
    given: { QL: { value: flat.QL, unit: '1, 0 for no leak' } },
    got: ({ QL }) => boxOf(butterworth(4), { QL, Qts: 0.3 }, true)[quantity],
    expected: flat[column],
    unit: '1',
    tolerance,
  });
}

check('alignment.solve.driver', {
  formula: 'alignment/solveAlignment',
  source,
  status: 'derived',
  kind: 'table',
  given: { QL: { value: quasi.QL, unit: '1, 0 for no leak' }, Qts: { value: quasi.Qts, unit: '1' } },
  got: (row) => boxOf(quasiThirdOrder, row).QT,
  expected: quasi.Qts,
  unit: '1',
  tolerance,
});
