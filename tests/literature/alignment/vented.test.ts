/** Boxes of alignments, against the tables that were worked out apart from the network. */
import {
  type Alignment,
  bessel,
  boomBox,
  boxesThatSuit,
  butterworth,
  type Candidate,
  candidate,
  chebyshev,
  interOrder,
  linkwitzRiley,
  quasiThirdOrder,
  solveAlignment,
  subChebyshev,
  superBoomBox,
} from '@airspring/core/alignment';
import {
  type Drivers,
  type VentedBoxInput,
  type VentedBoxSpec,
  ventedFamily,
  ventedRatios,
} from '@airspring/core/enclosure';
import { checkIn } from '../../ledger/check.js';
import { type AlignmentRow, alignments, fs, paperAir, physical, split } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

const source = { key: 'small1973vented1', locator: 'definition of the alignment' };
const tolerance = { relative: 1e-9, why: 'the table has ten digits' };

type Solved = ReturnType<typeof solveAlignment<VentedBoxSpec, VentedBoxInput>>;
const driverOf = (Qts: number) => physical({ fs, ...split(Qts), Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);

/** alpha, h or f3/fs of the box that an alignment gives the driver of a row. */
const boxOf = (type: Alignment, { QL, Qts }: Pick<AlignmentRow, 'QL' | 'Qts'>, addResistance = false) => {
  const box = { drivers: driverOf(Qts), ...(QL > 0 && { QL }) };
  return told(solveAlignment(type, ventedFamily, box, { air: paperAir, addResistance }));
};
function told(found: Solved) {
  if (!found.ok) throw new Error(found.because[0]?.text);
  const { alpha, h, QT } = ventedRatios(found.system.spec, paperAir);
  return {
    alpha,
    h,
    QT,
    frequency: (found.frequency ?? Number.NaN) / fs,
    f3: (found.f3.ok ? found.f3.frequency : Number.NaN) / fs,
  };
}

/** Alignments that take their parameter from the driver: each row of the table is a driver. */
const ofDriver = {
  QB3: () => quasiThirdOrder,
  C4: () => chebyshev(4),
  SC4: () => subChebyshev(4),
  BB4: () => boomBox,
  SBB4: () => superBoomBox,
};
const formulas = {
  QB3: 'alignment/quasiThirdOrder',
  C4: 'alignment/chebyshev',
  SC4: 'alignment/subChebyshev',
  BB4: 'alignment/boomBox',
  SBB4: 'alignment/superBoomBox',
} as const;
/** The table has the two boom boxes as one: the section of a row says which it is. */
const rowsOf = (name: keyof typeof ofDriver) => {
  const all = alignments(name === 'SBB4' ? 'BB4' : name);
  if (name !== 'BB4' && name !== 'SBB4') return all;
  const places = [...all.a1.keys()].filter((i) => all.a1[i]! >= Math.SQRT2 * 2 === (name === 'SBB4'));
  return Object.fromEntries(
    Object.entries(all).map(([column, list]) => [column, places.map((i) => list[i]!)]),
  ) as unknown as typeof all;
};
for (const name of Object.keys(ofDriver) as (keyof typeof ofDriver)[]) {
  const rows = rowsOf(name);
  for (const quantity of ['alpha', 'h', 'f3'] as const) {
    check(`alignment.${name}.${quantity}`, {
      formula: formulas[name],
      source,
      status: 'derived',
      kind: 'table',
      given: { QL: { value: rows.QL, unit: '1, 0 for no leak' }, Qts: { value: rows.Qts, unit: '1' } },
      got: (row) => boxOf(ofDriver[name](), row)[quantity],
      expected: rows[quantity],
      unit: '1',
      tolerance,
    });
  }
}

/** Fixed alignments: the driver has a lower quality factor than they take, and the resistance that is added raises it. */
const fixed = { B4: butterworth(4), BE4: bessel(4), LR4: linkwitzRiley, IB4: interOrder() };
for (const name of Object.keys(fixed) as (keyof typeof fixed)[]) {
  const rows = alignments(name);
  for (const [quantity, column] of [
    ['alpha', 'alpha'],
    ['h', 'h'],
    ['f3', 'f3'],
    ['QT', 'Qts'],
  ] as const) {
    check(`alignment.${name}.${quantity}`, {
      formula: 'alignment/solveAlignment',
      source,
      status: 'derived',
      kind: 'table',
      given: { QL: { value: rows.QL, unit: '1, 0 for no leak' } },
      got: ({ QL }) => boxOf(fixed[name], { QL, Qts: 0.28 }, true)[quantity],
      expected: rows[column],
      unit: '1',
      tolerance,
    });
  }
}

/** The same boxes by a list of candidates, and one candidate alone. */
for (const [formula, solve] of [
  ['alignment/candidate', (one: Candidate, drivers: Drivers) => one.solve(drivers)],
  ['alignment/boxesThatSuit', (one: Candidate, drivers: Drivers) => boxesThatSuit(drivers, [one])[0]!.result],
] as const) {
  // Every tenth: the alignment itself has checks of all.
  const all = rowsOf('QB3');
  const some = (column: readonly number[]) => column.filter((_, i) => i % 10 === 3);
  for (const quantity of ['alpha', 'h', 'f3'] as const)
    check(`alignment.${formula.slice(10)}.${quantity}`, {
      formula,
      source,
      status: 'derived',
      kind: 'table',
      given: { QL: { value: some(all.QL), unit: '1, 0 for no leak' }, Qts: { value: some(all.Qts), unit: '1' } },
      got: ({ QL, Qts }) => {
        const one = candidate(quasiThirdOrder, ventedFamily, QL > 0 ? { QL } : {}, { air: paperAir });
        return told(solve(one, driverOf(Qts)) as Solved)[quantity];
      },
      expected: some(all[quantity]),
      unit: '1',
      tolerance,
    });
}

const flat = alignments('B4');
check('alignment.B4.frequency', {
  formula: 'alignment/solveAlignment',
  source: { ...source, locator: 'the response is over √(ωs ωb)' },
  status: 'derived',
  kind: 'table',
  given: { QL: { value: flat.QL, unit: '1, 0 for no leak' } },
  got: ({ QL }) => boxOf(butterworth(4), { QL, Qts: 0.28 }, true).frequency,
  expected: flat.h.map(Math.sqrt),
  unit: '1',
  tolerance,
});
