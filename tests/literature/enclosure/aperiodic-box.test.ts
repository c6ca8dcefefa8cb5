import { aperiodicBox, closedBox, type System } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, cutoff, probeColumns, referenceLevel, respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { flat, largest, worst } from '../../circuit/compare.js';
import { checkIn } from '../../ledger/check.js';
import { at, type Complex, flowOf, over, product, sum } from '../complex.js';
import { paperAir, physical, split } from './textbook.js';

const check = checkIn(paperAir);

const [fs, Qts, Vas, alpha] = [30, 0.5, 0.06, 3];
const netVolume = si('volume', Vas / alpha);
const drivers = physical({ fs, ...split(Qts), Vas, Sd: 0.033, Re: 5.6 }, paperAir);
const Cab = netVolume / (1.18 * 345 ** 2);
/** The vent of which ωs R C is t. */
const ventResistance = (t: number) => si('acousticResistance', t / (2 * Math.PI * fs * Cab));
const box = (t: number) => aperiodicBox({ drivers, netVolume, ventResistance: ventResistance(t) }, paperAir);
/** p/p∞ = s³/((s² + s/Qts + 1)(s + 1/t) + α s), s over ωs. */
const response = (t: number) => (s: Complex) =>
  over(at(s, 0, 0, 0, 1), sum(product(at(s, 1, 1 / Qts, 1), at(s, 1 / t, 1)), at(s, 0, alpha)));

const source = { key: 'small1972direct', locator: 'circuit with a resistance to the air outside, response worked out' };
const grid = logarithmicGrid(5, 500, 101);
const printed = flowOf(response(0.6), drivers, fs, grid);
check('enclosure.aperiodic.response', {
  formula: 'enclosure/aperiodicBox',
  source,
  status: 'derived',
  kind: 'standard',
  given: { t: { value: 0.6, unit: 'ωs R C' }, Qts: { value: Qts, unit: '1' }, alpha: { value: alpha, unit: '1' } },
  got: ({ t }) => flat(probeColumns(compiledSystem(box(t)), grid).radiatedFlow!),
  expected: flat(printed),
  unit: 'm³/s per V',
  tolerance: { absolute: 2e-14 * largest(printed), why: 'of the largest value; both in double precision' },
});
check('enclosure.aperiodic.level', {
  formula: 'enclosure/aperiodicBox',
  source: { ...source, locator: 'response function; pressure ρf|U| at 1 m in half space' },
  status: 'derived',
  kind: 'standard',
  given: { density: { value: 1.18, unit: 'kg/m³' }, driveVoltageRms: { value: 1, unit: 'V' } },
  got: () => respond(box(0.6), grid).levelHalfSpace,
  expected: Array.from(
    grid,
    (f, i) => 20 * Math.log10((1.18 * f * Math.hypot(printed.re[i]!, printed.im[i]!)) / 20e-6),
  ),
  unit: 'dB',
  tolerance: { absolute: 1e-12, why: 'both in double precision' },
});
// V/(ρc²), QL/(ωc Cab), 1/(ωc Cab QA), R and 1/area; the driver resonates in the closed box at twice 30 Hz: worked out apart.
check('enclosure.aperiodic.numbers', {
  formula: 'enclosure/aperiodicBox',
  source: { key: 'small1973vented1', locator: 'definitions of QL and QA, taken at fc' },
  status: 'derived',
  kind: 'standard',
  given: {
    QL: { value: 8, unit: '1' },
    QA: { value: 25, unit: '1' },
    ventResistance: { value: 12000, unit: 'Pa·s/m³' },
  },
  got: ({ QL, QA, ventResistance: R }) => {
    const box = {
      drivers,
      netVolume,
      QL,
      QA,
      ventResistance: si('acousticResistance', R),
      ventArea: '40 cm²',
    } as const;
    const { values } = aperiodicBox({ ...box, sourceResistance: '0.4 ohm' }, paperAir).network;
    const names = ['Cab', 'leak', 'absorption', 'vent', 'perVentArea', 'sourceResistance'];
    return names.map((name) => Number(values[name]));
  },
  expected: [1.4239993734402758e-7, 149021.54786523437, 745.1077393261718, 12000, 250, 0.4],
  unit: 'm³/Pa, Pa·s/m³, 1/m², Ω',
  tolerance: { relative: 1e-13, why: 'closed form in double precision' },
});

test('a vent that lets nothing through makes a closed box, one that resists nothing a baffle without box', () => {
  const closed = closedBox({ drivers, netVolume }, paperAir) as System;
  const swept = (system: System) => probeColumns(compiledSystem(system), grid).radiatedFlow!;
  expect(worst(swept(closed), swept(box(1e7)))).toBeLessThan(1e-5);
  const { impedance } = respond(box(1e-4), [20, fs, 45]);
  expect(impedance[1]).toBeGreaterThan(Math.max(impedance[0]!, impedance[2]!));
});
test('it lowers the peak of the impedance, and reaches less deep', () => {
  const peak = (system: System) => Math.max(...respond(system, grid).impedance);
  const closed = closedBox({ drivers, netVolume }, paperAir) as System;
  expect(peak(box(0.6))).toBeLessThan(0.6 * peak(closed));
  const [a, b] = [cutoff(box(0.6), { drop: 10 }), cutoff(closed, { drop: 10 })];
  expect(a.ok && b.ok && a.frequency > b.frequency).toBe(true);
  expect(referenceLevel(box(0.6))).toBeCloseTo(referenceLevel(closed), 9);
});
