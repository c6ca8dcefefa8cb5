import { capacitorBox, closedBox, type System } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, cutoff, probeColumns, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { flat, largest, worst } from '../../circuit/compare.js';
import { checkIn } from '../../ledger/check.js';
import { at, type Complex, flowOf, over, product, sum } from '../complex.js';
import { paperAir, physical } from './textbook.js';

const check = checkIn(paperAir);

const [fs, Vas, Re] = [30, 0.06, 5.6];
const alpha = 3;
const rise = Math.sqrt(1 + alpha);
const fc = fs * rise;

/** Quality factors of the driver in the box, and 1/(ωc Re C). */
interface Row {
  readonly Qmc: number;
  readonly Qec: number;
  readonly g: number;
}
const drivers = ({ Qmc, Qec }: Row) => physical({ fs, Qes: Qec / rise, Qms: Qmc / rise, Vas, Sd: 0.033, Re }, paperAir);
const box = (row: Row) =>
  capacitorBox(
    {
      drivers: drivers(row),
      netVolume: si('volume', Vas / alpha),
      seriesCapacitance: si('capacitance', 1 / (2 * Math.PI * fc * Re * row.g)),
    },
    paperAir,
  );
/** p/p∞ = s³/((s + g)(s² + s/Qmc + 1) + s²/Qec), s over ωc. */
const response =
  ({ Qmc, Qec, g }: Row) =>
  (s: Complex) =>
    over(at(s, 0, 0, 0, 1), sum(product(at(s, g, 1), at(s, 1, 1 / Qmc, 1)), at(s, 0, 0, 1 / Qec)));

const source = { key: 'small1972direct', locator: 'circuit with a capacitor before the coil, its response worked out' };
const grid = logarithmicGrid(5, 500, 101);
const row = { Qmc: 5, Qec: 1.1, g: 0.3 };
const printed = flowOf(response(row), drivers(row), fc, grid);
check('enclosure.capacitor-box.response', {
  formula: 'enclosure/capacitorBox',
  source,
  status: 'derived',
  kind: 'standard',
  given: { Qmc: { value: 5, unit: '1' }, Qec: { value: 1.1, unit: '1' }, g: { value: 0.3, unit: '1/(ωc Re C)' } },
  got: (given) => flat(probeColumns(compiledSystem(box(given)), grid).radiatedFlow!),
  expected: flat(printed),
  unit: 'm³/s per V',
  tolerance: { absolute: 2e-14 * largest(printed), why: 'of the largest value; both in double precision' },
});
check('enclosure.capacitor-box.level', {
  formula: 'enclosure/capacitorBox',
  source: { ...source, locator: 'response function; pressure ρf|U| at 1 m in half space' },
  status: 'derived',
  kind: 'standard',
  given: { density: { value: 1.18, unit: 'kg/m³' }, driveVoltageRms: { value: 1, unit: 'V' } },
  got: () => respond(box(row), grid).levelHalfSpace,
  expected: Array.from(
    grid,
    (f, i) => 20 * Math.log10((1.18 * f * Math.hypot(printed.re[i]!, printed.im[i]!)) / 20e-6),
  ),
  unit: 'dB',
  tolerance: { absolute: 1e-12, why: 'both in double precision' },
});
// 2x² = 1 + x³/Qmc, g = x³ and 1/Qec = 2x − g − 1/Qmc make s³ + 2xs² + 2x²s + x³: Butterworth of third order at x fc.
const flattest = [
  [3, 0.43274915409609643, 1.3392326960621557, 0.7563893567574943],
  [5, 0.3964231365634892, 1.1457590178320414, 0.7346035077893032],
  [20, 0.36322854096287877, 0.9864177130592217, 0.7134989232816487],
] as const;
const columnOf = (k: 0 | 1 | 2 | 3) => flattest.map((list) => list[k]);
for (const drop of [1, undefined, 6, 10]) {
  check(`enclosure.capacitor-box.butterworth.${drop ?? 'half-power'}`, {
    formula: 'enclosure/capacitorBox',
    source: { key: 'small1972direct', locator: 'the same circuit; third-order Butterworth, |p/p∞|² = u⁶/(u⁶ + 1)' },
    status: 'derived',
    kind: 'standard',
    given: {
      Qmc: { value: columnOf(0), unit: '1' },
      Qec: { value: columnOf(2), unit: '1' },
      g: { value: columnOf(1), unit: '1/(ωc Re C)' },
    },
    got: (given) => {
      const found = cutoff(box(given), drop === undefined ? {} : { drop });
      return found.ok ? found.frequency / fc : Number.NaN;
    },
    expected: columnOf(3).map((x) => x * (drop === undefined ? 1 : (10 ** (drop / 10) - 1) ** (-1 / 6))),
    unit: 'f/fc',
    tolerance: { relative: 2e-13, why: 'roots in double precision' },
  });
}
// C, V/(ρc²), QL/(ωc Cab) and 1/(ωc Cab QA) of a box of 20 L, in which the driver resonates at twice 30 Hz: worked out apart.
check('enclosure.capacitor-box.losses', {
  formula: 'enclosure/capacitorBox',
  source: { key: 'small1973vented1', locator: 'definitions of QL and QA, taken at fc' },
  status: 'derived',
  kind: 'standard',
  given: { QL: { value: 8, unit: '1' }, QA: { value: 25, unit: '1' }, Rg: { value: 0.4, unit: 'Ω' } },
  got: ({ QL, QA, Rg }) => {
    const { spec } = box(row);
    const { values } = capacitorBox({ ...spec, QL, QA, sourceResistance: si('resistance', Rg) }, paperAir).network;
    return ['Cab', 'leak', 'absorption', 'seriesCapacitance', 'sourceResistance'].map((name) => Number(values[name]));
  },
  expected: [1.4239993734402758e-7, 149021.54786523437, 745.1077393261718, 0.001578918086229121, 0.4],
  unit: 'm³/Pa, Pa·s/m³, F, Ω',
  tolerance: { relative: 1e-13, why: 'closed form in double precision' },
});

test('a very large capacitor is none, and its impedance stands before it', () => {
  const { drivers: group, netVolume } = box(row).spec;
  const closed = closedBox({ drivers: group, netVolume }, paperAir) as System;
  const with10F = capacitorBox({ drivers: group, netVolume, seriesCapacitance: '10 F' }, paperAir);
  const [a, b] = [closed, with10F].map((system) => probeColumns(compiledSystem(system), grid).radiatedFlow!);
  expect(worst(a!, b!)).toBeLessThan(1e-3);
  const { impedance } = respond(box(row), [1]);
  expect(impedance[0]).toBeGreaterThan(0.9 / (2 * Math.PI * box(row).spec.seriesCapacitance));
});
