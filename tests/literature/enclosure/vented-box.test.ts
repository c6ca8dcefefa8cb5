import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { cutoff, levelCrossings, referenceLevel, respond } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import { alignments, fs, paperAir, ventedOf } from './textbook.js';

const check = checkIn(paperAir);

const derivedFrom = { key: 'small1973vented1', locator: 'response function and definition of the alignment' };
const f3 = (system: Parameters<typeof cutoff>[0], drop?: number) => {
  const found = cutoff(system, drop === undefined ? {} : { drop });
  return found.ok ? found.frequency / fs : Number.NaN;
};
const given = ({ QL, Qts, h, alpha }: ReturnType<typeof alignments>) => ({
  QL: { value: QL, unit: '1, 0 for no leak' },
  Qts: { value: Qts, unit: '1' },
  h: { value: h, unit: '1' },
  alpha: { value: alpha, unit: '1' },
});

for (const family of ['B4', 'BE4', 'LR4', 'IB4', 'QB3', 'SQB3', 'SC4', 'C4', 'BB4']) {
  const rows = alignments(family);
  check(`enclosure.vented.${family.toLowerCase()}`, {
    formula: 'enclosure/ventedBox',
    source: { ...derivedFrom, locator: `${derivedFrom.locator} ${family}` },
    status: 'derived',
    kind: 'table',
    given: given(rows),
    got: (row) => f3(ventedOf(row)),
    expected: rows.f3,
    unit: 'f3/fs',
    tolerance: { relative: 5e-9, why: 'values to ten digits; a flat top magnifies their last one' },
  });
}

const all = alignments();
check('enclosure.vented.half-power', {
  formula: 'response/respond',
  source: derivedFrom,
  status: 'derived',
  kind: 'table',
  given: { ...given(all), f3: { value: all.f3, unit: 'f3/fs' } },
  got: ({ f3, ...row }) => {
    const system = ventedOf(row);
    return (respond(system, [f3 * fs]).levelHalfSpace[0] as number) - referenceLevel(system);
  },
  expected: all.f3.map(() => -3.010299957),
  unit: 'dB',
  tolerance: { absolute: 1e-7, why: 'values to ten digits' },
});
check('response.f10', {
  formula: 'response/cutoff',
  source: derivedFrom,
  status: 'derived',
  kind: 'table',
  given: given(all),
  got: (row) => f3(ventedOf(row), 10),
  expected: all.f10,
  unit: 'f10/fs',
  tolerance: { relative: 5e-9, why: 'values to ten digits' },
});

check('response.crossings.f10', {
  formula: 'response/levelCrossings',
  source: derivedFrom,
  status: 'derived',
  kind: 'table',
  given: given(all),
  got: (row) => (levelCrossings(ventedOf(row), { drop: 10 })[0] ?? Number.NaN) / fs,
  expected: all.f10,
  unit: 'f10/fs',
  tolerance: { relative: 5e-9, why: 'values to ten digits' },
});

// Printed rows, three to five digits each.
const sc4 = {
  source: { key: 'dickason', locator: 'vented-box table for SC4, QL = 7' },
  status: 'seen',
  kind: 'table',
  given: {
    QL: { value: 7, unit: '1' },
    Qts: { value: 0.4, unit: '1' },
    h: { value: 1.0103, unit: '1' },
    alpha: { value: 1.1146, unit: '1' },
  },
  printed: '1.0215',
  unit: 'f3/fs',
} as const;
check('enclosure.vented.printed.sc4', {
  ...sc4,
  formula: 'enclosure/ventedBox',
  got: (row) => f3(ventedOf(row)),
});
check('response.crossings.printed', {
  ...sc4,
  formula: 'response/levelCrossings',
  got: (row) => (levelCrossings(ventedOf(row))[0] ?? Number.NaN) / fs,
});
check('enclosure.vented.printed.c4', {
  formula: 'enclosure/ventedBox',
  source: { key: 'student2023', locator: 'question 1, table values for the rounded Qts' },
  status: 'seen',
  kind: 'table',
  given: {
    QL: { value: 7, unit: '1' },
    Qts: { value: 0.6, unit: '1' },
    h: { value: 0.68, unit: '1' },
    alpha: { value: 0.275, unit: '1' },
  },
  got: (row) => f3(ventedOf(row)),
  printed: '0.588',
  unit: 'f3/fs',
});

// Definitions of the losses: QL = ωb Cab Ral, QA = 1/(ωb Cab Rab), QP = ωb Map/Rap.
const drivers = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
});
const air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const lossesOf = (QL: number, QA: number, QP: number) => {
  const { values } = ventedBox({ drivers, netVolume: '50 L', fb: '30 Hz', QL, QA, QP }, air).network;
  return ['Cab', 'vent', 'leak', 'absorption', 'ventLoss'].map((name) => values[name] as number);
};
check('enclosure.vented.losses', {
  formula: 'enclosure/ventedBox',
  air,
  source: {
    key: 'small1973vented1',
    locator: 'definitions of QL, QA, QP; box of 50 L at 30 Hz, air 1.2 kg/m³, 343 m/s',
  },
  status: 'derived',
  kind: 'standard',
  given: { QL: { value: 7, unit: '1' }, QA: { value: 50, unit: '1' }, QP: { value: 80, unit: '1' } },
  got: ({ QL, QA, QP }) => lossesOf(QL, QA, QP),
  // Cab = 0.05/(1.2 · 343²), Map = 1/(ωb² Cab), QL/(ωb Cab), 1/(ωb Cab QA), ωb Map/QP, worked out apart.
  expected: [3.541608e-7, 79.46891, 104856.75, 299.59072, 187.2442],
  unit: 'm³/Pa, kg/m⁴, Pa·s/m³',
  tolerance: { relative: 1e-7, why: 'seven digits' },
});
