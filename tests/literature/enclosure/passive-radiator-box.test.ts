import { standardAir } from '@airspring/core/air';
import { passiveRadiator } from '@airspring/core/driver';
import {
  addedMassForTuning,
  type PassiveRadiatorTuning,
  passiveRadiatorBox,
  passiveRadiatorTuning,
} from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, cutoff, probeColumns, referenceLevel, respond } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { flat, largest, worst } from '../../circuit/compare.js';
import { checkIn } from '../../ledger/check.js';
import { type RadiatorRow, radiatorBoxOf, textbookFlow } from './passive-radiator.js';
import table from './passive-radiators.json' with { type: 'json' };
import { fs, paperAir, physical, split } from './textbook.js';

const check = checkIn(paperAir);

const column = (name: string) => table.rows.map((row) => row[table.columns.indexOf(name)]!);
const given = {
  Qts: { value: column('Qts'), unit: '1' },
  h: { value: column('h'), unit: 'fb/fs' },
  alpha: { value: column('alpha'), unit: '1' },
  delta: { value: column('delta'), unit: '1' },
};
const derivedFrom = { key: 'small1974pr1', locator: 'response function; maximally flat, without losses' };
const derived = { source: derivedFrom, status: 'derived', kind: 'table' } as const;

check('enclosure.passive-radiator.maximally-flat', {
  ...derived,
  formula: 'enclosure/passiveRadiatorBox',
  given,
  got: (row) => {
    const found = cutoff(radiatorBoxOf(row));
    return found.ok ? found.frequency / fs : Number.NaN;
  },
  expected: column('f3'),
  unit: 'f3/fs',
  tolerance: { relative: 1e-6, why: 'values to eight digits; a flat top magnifies their last one' },
});
check('enclosure.passive-radiator.notch', {
  ...derived,
  formula: 'enclosure/passiveRadiatorTuning',
  source: { ...derivedFrom, locator: 'passive-radiator resonance and box tuning' },
  given: {
    delta: { value: table.notches.map(([delta]) => delta as number), unit: '1' },
    fb: { value: table.notches.map(([, fb]) => fb as number), unit: 'Hz' },
  },
  got: ({ delta, fb }) => {
    // A box of 50 L: the compliance ratio says Vas, a mass without a suspension says the rest.
    const radiator = passiveRadiator({ Sd: '400 cm²', Vas: si('volume', 0.05 * delta), Mms: '10 g', Rms: '1 kg/s' });
    const found = addedMassForTuning({ netVolume: '50 L', radiator, fb: si('frequency', fb) });
    if (!found.ok) return Number.NaN;
    return passiveRadiatorTuning({ netVolume: '50 L', radiator, addedMass: found.addedMass }).notch;
  },
  expected: table.notches.map(([, , fp]) => fp as number),
  unit: 'Hz',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});

// Vas/(ρc²Sd²), 1/(ωs²Cms), ωs Mms/Qms and what follows, worked out apart: air of 1.2 kg/m³ and 343 m/s, a box of 45 L.
const air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const sheet = { Sd: '330 cm²', fs: '17 Hz', Vas: '110 L', Qms: 6, sheetAir: air } as const;
const worked = { relative: 5e-15, why: 'closed form in double precision' };
const parts = ({ fb, notch, complianceRatio }: PassiveRadiatorTuning): number[] => [fb, notch, complianceRatio];
for (const [id, count, addedMass, expected] of [
  ['bare', 1, 0, [31.550664722703463, 17, 2.4444444444444446]],
  ['heavier', 1, 0.04, [27.3937337672366, 14.760179480716776, 2.4444444444444446]],
  ['two', 2, 0.1, [30.610548586234092, 12.614046649751582, 4.888888888888889]],
] as const) {
  const input = { netVolume: '45 L', radiator: sheet, count } as const;
  check(`enclosure.passive-radiator.tuning.${id}`, {
    ...derived,
    kind: 'standard',
    formula: 'enclosure/passiveRadiatorTuning',
    air: air,
    source: {
      ...derivedFrom,
      locator: 'passive-radiator resonance and box tuning; invented radiator of 330 cm², 17 Hz',
    },
    given: { count: { value: count, unit: '1' }, addedMass: { value: addedMass, unit: 'kg' } },
    got: () => parts(passiveRadiatorTuning({ ...input, addedMass: si('mass', addedMass) }, air)),
    expected,
    unit: 'Hz, Hz, 1',
    tolerance: worked,
  });
  check(`enclosure.passive-radiator.mass.${id}`, {
    ...derived,
    kind: 'standard',
    formula: 'enclosure/addedMassForTuning',
    air: air,
    source: { ...derivedFrom, locator: 'passive-radiator resonance and box tuning, solved for the mass' },
    given: { count: { value: count, unit: '1' }, fb: { value: expected[0], unit: 'Hz' } },
    got: ({ fb }) => {
      const found = addedMassForTuning({ ...input, fb: si('frequency', fb) }, air);
      return found.ok ? [found.addedMass, ...parts(found)] : [Number.NaN];
    },
    expected: [addedMass, ...expected],
    unit: 'kg, Hz, Hz, 1',
    tolerance: { absolute: 4e-14, why: 'sixteen digits' },
  });
}
// QL/(ωb Cab), 1/(ωb Cab QA) and the moving parts of two radiators, 60 g on each, in a box of 50 L: worked out apart.
check('enclosure.passive-radiator.losses', {
  ...derived,
  kind: 'standard',
  formula: 'enclosure/passiveRadiatorBox',
  air: air,
  source: { ...derivedFrom, locator: 'circuit and box losses at the tuning; invented radiator of 330 cm², 17 Hz' },
  given: { QL: { value: 7, unit: '1' }, QA: { value: 50, unit: '1' }, count: { value: 2, unit: '1' } },
  got: ({ QL, QA, count }) => {
    const drivers = physical({ fs, ...split(0.4), Vas: 0.06, Sd: 0.033, Re: 5.6 }, air);
    const box = { drivers, netVolume: '50 L', radiator: sheet, count, addedMass: '60 g', QL, QA } as const;
    const { values } = passiveRadiatorBox(box, air).network;
    return ['leak', 'absorption', 'radiatorMass', 'radiatorCompliance', 'radiatorLoss', 'radiators'].map((name) =>
      Number(values[name]),
    );
  },
  expected: [97192.65188571092, 277.6932911020312, 0.3650062126296336, 0.0003577382050637242, 4.36168840019299, 0.066],
  unit: 'Pa·s/m³, Pa·s/m³, kg, m/N, N·s/m, m²',
  tolerance: { relative: 5e-15, why: 'closed form in double precision' },
});

const rows: Readonly<Record<string, RadiatorRow>> = {
  'without losses': { Qts: 0.3, h: 1.4, alpha: 3, delta: 3 },
  'with losses': { Qts: 0.36, h: 1.1, alpha: 1.6, delta: 8, Qmp: 6, QL: 10 },
  'stiff and heavy': { Qts: 0.5, h: 0.8, alpha: 0.7, delta: 0.5, Qmp: 3, QL: 20 },
};
const grid = logarithmicGrid(5, 500, 101);
describe.each(Object.entries(rows))('the printed response, %s', (_, row) => {
  test.each([1, 2, 4])('%i radiators', (count) => {
    const { radiatedFlow } = probeColumns(compiledSystem(radiatorBoxOf(row, { count })), grid);
    expect(worst(textbookFlow(row, grid), radiatedFlow!)).toBeLessThan(1e-9);
  });
});
const lossy = rows['with losses'] as RadiatorRow;
const printed = textbookFlow(lossy, grid);
check('enclosure.passive-radiator.response', {
  ...derived,
  kind: 'standard',
  formula: 'enclosure/passiveRadiatorBox',
  source: { ...derivedFrom, locator: 'response function with the losses of radiator and leak' },
  given: {
    Qts: { value: lossy.Qts, unit: '1' },
    h: { value: lossy.h, unit: 'fb/fs' },
    alpha: { value: lossy.alpha, unit: '1' },
    delta: { value: lossy.delta, unit: '1' },
    Qmp: { value: lossy.Qmp as number, unit: '1' },
    QL: { value: lossy.QL as number, unit: '1' },
  },
  got: (row) => flat(probeColumns(compiledSystem(radiatorBoxOf(row, { count: 3 })), grid).radiatedFlow!),
  expected: flat(printed),
  unit: 'm³/s per V',
  tolerance: { absolute: 1e-13 * largest(printed), why: 'of the largest value; both in double precision' },
});

check('enclosure.passive-radiator.level', {
  ...derived,
  kind: 'standard',
  formula: 'enclosure/passiveRadiatorBox',
  source: { ...derivedFrom, locator: 'response function; pressure ρf|U| at 1 m in half space' },
  given: { density: { value: 1.18, unit: 'kg/m³' }, driveVoltageRms: { value: 1, unit: 'V' } },
  got: () => respond(radiatorBoxOf(lossy), grid).levelHalfSpace,
  expected: Array.from(
    grid,
    (f, i) => 20 * Math.log10((1.18 * f * Math.hypot(printed.re[i]!, printed.im[i]!)) / 20e-6),
  ),
  unit: 'dB',
  tolerance: { absolute: 1e-12, why: 'both in double precision' },
});

test.each(table.rows)('the level has its notch where the radiators resonate in free air: δ = %d', (...row) => {
  const [delta, Qts, h, alpha] = row as [number, number, number, number];
  const { spec, air, ...rest } = radiatorBoxOf({ delta, Qts, h, alpha });
  const { netVolume, radiator, count, addedMass } = spec;
  const { notch } = passiveRadiatorTuning({ netVolume, radiator, count, addedMass }, air);
  expect(notch / fs).toBeCloseTo(row[table.columns.indexOf('fp')]!, 6);
  const { levelHalfSpace: level } = respond(
    { spec, air, ...rest },
    [0.98, 0.999, 1, 1.001, 1.02].map((ratio) => ratio * notch),
  );
  expect(Math.min(level[1]!, level[3]!) - level[2]!).toBeGreaterThan(50);
  expect([level[0]! > level[1]!, level[4]! > level[3]!]).toEqual([true, true]);
});
test('far above all resonances the level is that of the reference', () => {
  const system = radiatorBoxOf(lossy);
  expect(respond(system, [20_000]).levelHalfSpace[0]! - referenceLevel(system)).toBeCloseTo(0, 4);
});

/** Largest volume that a cone of this area moves per volt from the tuning upwards, times 2π. */
const largestVolume = (row: RadiatorRow, probe: string, area: number): number => {
  const band = logarithmicGrid(row.h * fs, 20 * fs, 1001);
  const { re, im } = probeColumns(compiledSystem(radiatorBoxOf(row)), band)[probe]!;
  return Math.max(...band.map((f, i) => (area * Math.hypot(re[i]!, im[i]!)) / f));
};
// The abstract of small1974pr1, read in print: the radiator should move at least twice the volume that the driver can.
test.each(table.rows)(
  'from the tuning upwards the radiator moves more than twice the air of the cone: δ = %d',
  (...row) => {
    const [delta, Qts, h, alpha] = row as [number, number, number, number];
    const flat = { delta, Qts, h, alpha };
    const ratio = largestVolume(flat, 'radiatorVelocity', 0.045) / largestVolume(flat, 'coneVelocity', 0.033);
    expect(ratio).toBeGreaterThan(2);
    expect(ratio).toBeLessThan(3);
  },
);
