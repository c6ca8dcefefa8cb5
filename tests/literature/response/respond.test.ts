import { type Air, standardAir } from '@airspring/core/air';
import type { Driver } from '@airspring/core/driver';
import { closedBox, ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { features, levelColumn, radiatedPower, referenceLevel, respond } from '@airspring/core/response';
import { check } from '../../ledger/check.js';
import { closedOf, fs, physical, ventedOf } from '../enclosure/textbook.js';
import points from './points.json' with { type: 'json' };

const airOf = (density: number, speedOfSound: number): Air => ({
  ...standardAir,
  density: si('density', density),
  speedOfSound: si('speed', speedOfSound),
});

/** Level, phase and delay at points of the response; closed boxes have QL −1. */
for (const [family, key, rows] of [
  ['closed', 'small1972closed1', points.rows.filter(([QL]) => QL === -1)],
  ['vented', 'small1973vented1', points.rows.filter(([QL]) => QL !== -1)],
] as const) {
  const column = (name: string) => rows.map((row) => row[points.columns.indexOf(name)] as number);
  const given = {
    QL: { value: column('QL'), unit: '1, 0 for no leak, -1 closed' },
    Q: { value: column('Q'), unit: '1' },
    h: { value: column('h'), unit: '1' },
    alpha: { value: column('alpha'), unit: '1' },
    frequency: { value: column('frequency'), unit: 'f/fc or f/fs' },
  };
  type Row = { QL: number; Q: number; h: number; alpha: number; frequency: number };
  const at = ({ QL, Q, h, alpha, frequency }: Row) => {
    const base = QL === -1 ? 50 : fs;
    const system = QL === -1 ? closedOf({ Qtc: Q, fc: base }) : ventedOf({ QL, Qts: Q, h, alpha });
    return { system, base, columns: respond(system, [base * frequency]) };
  };
  const source = { key, locator: `${family}-box response function, from its poles` };
  const shared = { source, status: 'derived', kind: 'table', given } as const;
  check(`response.level.${family}`, {
    ...shared,
    formula: 'response/respond',
    got: (row) => {
      const { system, columns } = at(row);
      return (columns.levelHalfSpace[0] as number) - referenceLevel(system);
    },
    expected: column('level'),
    unit: 'dB',
    tolerance: { absolute: 1e-7, why: 'values to ten digits' },
  });
  for (const [id, formula] of [
    [`response.phase.${family}`, 'response/respond'],
    [`enclosure.${family}.phase`, `enclosure/${family}Box`],
  ] as const) {
    check(id, {
      ...shared,
      formula,
      // Whole turns apart is the same phase: the turn nearest to the printed one is taken.
      got: (row) => {
        const phase = ((at(row).columns.phase[0] as number) * 180) / Math.PI;
        return phase < -1e-6 ? phase + 360 : phase;
      },
      expected: column('phase'),
      unit: '°',
      tolerance: { absolute: 1e-6, why: 'values to ten digits' },
    });
  }

  check(`response.group-delay.${family}`, {
    ...shared,
    formula: 'response/respond',
    got: (row) => {
      const { base, columns } = at(row);
      return (columns.groupDelay[0] as number) * 2 * Math.PI * base;
    },
    expected: column('delay'),
    unit: 'rad',
    tolerance: { relative: 1e-8, why: 'values to ten digits' },
  });
}

/** The driver of a student's report, by its mechanical parameters, 2.83 V rms; air 1.2041 kg/m³, 343.2 m/s. */
const studentAir = airOf(1.2041, 343.2);
const student: Driver = {
  Re: si('resistance', 5.9),
  Bl: si('forceFactor', 5.13),
  Mms: si('mass', 0.0093),
  Cms: si('compliance', 0.000735),
  Rms: si('mechanicalResistance', Math.sqrt(0.0093 / 0.000735) / 3.35),
  Sd: si('coneArea', 0.008659014751),
};
const worked = {
  closed: {
    system: () => closedBox({ drivers: student, netVolume: '36 L' }, studentAir),
    frequencies: [20, 40, 60, 80, 100, 200],
    displacement: [2.095082523, 1.986741177, 1.650401631, 1.216230718, 0.8672200652, 0.2357214182],
    level: [65.76054072, 77.34054373, 82.77316111, 85.11923706, 86.05790457, 86.78449895],
    impedance: [6.468695563, 9.383528172, 23.85640052, 19.28476809, 11.1510809, 6.649802202],
  },
  vented: {
    // A vent of 1 m² makes its air speed the volume flow.
    system: () =>
      ventedBox({ drivers: student, netVolume: '28.15 L', fb: '41.4 Hz', QL: 7, ventArea: '1 m²' }, studentAir),
    frequencies: [20, 30, 41.4, 50, 60, 80, 100, 200],
    displacement: [
      2.664987577, 2.692286867, 0.8393782649, 1.336837341, 1.492348965, 1.213528462, 0.8778328449, 0.2370293416,
    ],
    level: [57.48492531, 75.65377683, 87.35644705, 87.25071524, 87.36272573, 87.76334601, 87.77454481, 87.20880766],
    impedance: [6.947165673, 10.99539963, 8.1244896, 9.231558529, 15.16671489, 22.37952137, 11.78436112, 6.662516368],
    ventFlow: [
      0.00266393976, 0.006392830635, 0.009358138113, 0.005248000534, 0.003076455638, 0.001359143965, 0.0006967794957,
      8.160532851e-5,
    ],
  },
};
for (const [family, example] of Object.entries(worked)) {
  const { system, frequencies, displacement, level, impedance } = example;
  const columns = () => respond(system(), frequencies, { driveVoltageRms: '2.83 V' });
  const shared = {
    formula: 'response/respond',
    source: { key: 'student2023', locator: 'parameter list; lumped circuit solved apart from the library' },
    status: 'derived',
    kind: 'example',
    given: { frequencies: { value: frequencies.join(' '), unit: 'Hz' }, drive: { value: 2.83, unit: 'V rms' } },
    tolerance: { relative: 1e-9, why: 'values to ten digits' },
  } as const;
  check(`enclosure.${family}.half-space`, {
    ...shared,
    formula: family === 'closed' ? 'enclosure/closedBox' : 'enclosure/ventedBox',
    got: () => columns().levelHalfSpace,
    expected: level,
    unit: 'dB',
  });
  check(`response.displacement.${family}`, {
    ...shared,
    got: () => columns().displacementPeak.map((x) => x * 1e3),
    expected: displacement,
    unit: 'mm peak',
  });
  check(`response.half-space.${family}`, {
    ...shared,
    got: () => columns().levelHalfSpace,
    expected: level,
    unit: 'dB',
  });
  check(`response.impedance.${family}`, { ...shared, got: () => columns().impedance, expected: impedance, unit: 'Ω' });
  if ('ventFlow' in example) {
    check('response.vent-flow', {
      ...shared,
      got: () => (columns().airSpeedPeak ?? new Float64Array()).map((speed) => speed / Math.SQRT2),
      expected: example.ventFlow,
      unit: 'm³/s rms',
    });
  }
}

/** Level of a volume displaced at a frequency: the flow is ω V/√2 rms. */
const displaced = (V: number, frequency: number) => (2 * Math.PI * frequency * V) / Math.SQRT2;
const volumes = {
  V: { value: [1e-4, 1e-4, 5e-4, 3.03065e-5], unit: 'm³ peak' },
  f: { value: [20, 40, 20, 41.4], unit: 'Hz' },
};
const point = {
  key: 'forumspl',
  locator: 'level of a peak volume displacement at 1 m, twice the full-space pressure; 1.2041 kg/m³',
};
check('response.volume-velocity', {
  formula: 'response/levelColumn',
  source: point,
  status: 'derived',
  kind: 'example',
  given: volumes,
  got: ({ V, f }) => {
    const out = new Float64Array(1);
    const flow = { re: Float64Array.of(0.6 * displaced(V, f)), im: Float64Array.of(-0.8 * displaced(V, f)) };
    levelColumn(Float64Array.of(f), flow, 1.2041, 1, out);
    return out[0] as number;
  },
  expected: [80.58714845, 92.62834828, 94.56654854, 82.85667795],
  unit: 'dB',
  tolerance: { absolute: 1e-8, why: 'values to ten digits' },
});
check('response.power', {
  formula: 'response/radiatedPower',
  source: point,
  status: 'derived',
  kind: 'example',
  given: volumes,
  got: ({ V, f }) => radiatedPower(displaced(V, f), f, airOf(1.2041, 343.2)),
  expected: [0.000696217394, 0.0111394783, 0.01740543485, 0.001174080349],
  unit: 'W',
  tolerance: { relative: 1e-9, why: 'values to ten digits' },
});

/** Reference efficiency and level of 1 W into Re, as the efficiency of the papers and the network tell it. */
check('response.reference-level', {
  formula: 'response/referenceLevel',
  source: {
    key: 'small1972direct',
    locator: 'reference efficiency 4π²/c³ fs³ Vas/Qes, and its level in half space; 1.18 kg/m³, 345 m/s',
  },
  status: 'derived',
  kind: 'table',
  given: {
    fs: { value: [19, 33, 25, 60.9, 40], unit: 'Hz' },
    Vas: { value: [0.54, 0.057, 0.1, 0.00774, 0.05], unit: 'm³' },
    Qes: { value: [0.35, 0.45, 0.4, 0.796, 0.5], unit: '1' },
  },
  got: ({ fs, Vas, Qes }) => {
    const air = airOf(1.18, 345);
    const drivers = { ...physical({ fs, Vas, Qes, Qms: 4, Sd: 0.03, Re: 6 }, air), Le: si('inductance', 1e-3) };
    const level = referenceLevel(closedBox({ drivers, netVolume: si('volume', Vas) }, air));
    return level + 10 * Math.log10(6); // 1 W into 6 Ω is √6 V
  },
  expected: [92.16950213, 88.50567856, 87.84123729, 85.34043465, 89.98543668],
  unit: 'dB',
  tolerance: { absolute: 1e-7, why: 'values to ten digits' },
});

check('response.features.impedance', {
  formula: 'response/features',
  source: {
    key: 'small1972direct',
    locator: 'Z = Re + Bl²/Rms where mass and springs cancel; asymptote ρ Bl Sd/(2π Mms Re)',
  },
  status: 'derived',
  kind: 'example',
  given: { of: { value: 'frequency and value of the greatest impedance; asymptote', unit: '' } },
  got: () => {
    const { impedanceMaxima, referenceLevel } = features(worked.closed.system());
    const [one] = impedanceMaxima;
    return one === undefined ? [] : [one.frequency, one.value, referenceLevel];
  },
  expected: [67.1583196946, 30.6845896323, 77.7940715354],
  unit: 'Hz, ohm, dB',
  tolerance: { relative: 1e-11, why: 'values to twelve digits' },
});
