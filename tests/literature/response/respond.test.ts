import { type Air, standardAir } from '@airspring/core/air';
import type { Driver } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { compile, valuesOf } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import {
  features,
  levelColumn,
  radiatedPower,
  referenceLevel,
  referenceLevelOf,
  respond,
} from '@airspring/core/response';
import { check } from '../../ledger/check.js';
import { closedOf, fs, paperAir, physical, ventedOf } from '../enclosure/textbook.js';
import pointSource from './point-source.json' with { type: 'json' };
import points from './points.json' with { type: 'json' };
import boxes from './worked-boxes.json' with { type: 'json' };

/** Level, phase and delay at points of the response; closed boxes have QL −1. */
for (const [family, key, rows] of [
  ['closed', 'small1972closed1', points.rows.filter(([QL]) => QL === -1)],
  ['vented', 'small1973vented1', points.rows.filter(([QL]) => QL !== -1)],
] as const) {
  const column = (name: string) => rows.map((row) => row[points.columns.indexOf(name)]!);
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
  const shared = { air: paperAir, source, status: 'derived', kind: 'table', given } as const;
  check(`response.level.${family}`, {
    ...shared,
    formula: 'response/respond',
    got: (row) => {
      const { system, columns } = at(row);
      return columns.levelHalfSpace[0]! - referenceLevel(system);
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
        const phase = (at(row).columns.phase[0]! * 180) / Math.PI;
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
      return columns.groupDelay[0]! * 2 * Math.PI * base;
    },
    expected: column('delay'),
    unit: 'rad',
    tolerance: { relative: 1e-8, why: 'values to ten digits' },
  });
}

/** A driver printed in a report, by its mechanical parameters, 2.83 V rms; air 1.2041 kg/m³, 343.2 m/s. */
const workedAir: Air = { ...standardAir, density: si('density', 1.2041), speedOfSound: si('speed', 343.2) };
const printed: Driver = {
  Re: si('resistance', 5.9),
  Bl: si('forceFactor', 5.13),
  Mms: si('mass', 0.0093),
  Cms: si('compliance', 0.000735),
  Rms: si('mechanicalResistance', Math.sqrt(0.0093 / 0.000735) / 3.35),
  Sd: si('coneArea', 0.008659014751),
};
const worked = {
  closed: {
    system: () => closedBox({ drivers: printed, netVolume: '36 L' }, workedAir),
    ...boxes.closed,
  },
  vented: {
    // A vent of 1 m² makes its air speed the volume flow.
    system: () =>
      ventedBox({ drivers: printed, netVolume: '28.15 L', fb: '41.4 Hz', QL: 7, ventArea: '1 m²' }, workedAir),
    ...boxes.vented,
  },
};
for (const [family, example] of Object.entries(worked)) {
  const { system, frequencies, displacement, level, impedance } = example;
  const columns = () => respond(system(), frequencies, { driveVoltageRms: '2.83 V' });
  const shared = {
    formula: 'response/respond',
    air: workedAir,
    source: { key: 'mpmath', locator: 'lu_solve of the equations of motion at 40 digits, script worked-boxes.py' },
    status: 'derived',
    kind: 'program',
    given: { frequencies: { value: frequencies.join(' '), unit: 'Hz' }, drive: { value: 2.83, unit: 'V rms' } },
    tolerance: { relative: 1e-14, why: 'double precision' },
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
  V: { value: pointSource.volume, unit: 'm³ peak' },
  f: { value: pointSource.frequency, unit: 'Hz' },
};
const point = {
  key: 'mpmath',
  locator:
    'wave of a breathing hemisphere far smaller than any wavelength, at 1 m; 1.2041 kg/m³, 343.2 m/s; script point-source.py',
};
check('response.volume-velocity', {
  formula: 'response/levelColumn',
  air: workedAir,
  source: point,
  status: 'derived',
  kind: 'program',
  given: volumes,
  got: ({ V, f }) => {
    const out = new Float64Array(1);
    const flow = { re: Float64Array.of(0.6 * displaced(V, f)), im: Float64Array.of(-0.8 * displaced(V, f)) };
    levelColumn(Float64Array.of(f), flow, 1.2041, 1, out);
    return out[0]!;
  },
  expected: pointSource.level,
  unit: 'dB',
  tolerance: { absolute: 1e-12, why: 'double precision' },
});
check('response.power', {
  formula: 'response/radiatedPower',
  air: workedAir,
  source: point,
  status: 'derived',
  kind: 'program',
  given: volumes,
  got: ({ V, f }) => radiatedPower(displaced(V, f), f, workedAir),
  expected: pointSource.power,
  unit: 'W',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

/** Reference efficiency and level of 1 W into Re, as the efficiency of the papers and the network tell it. */
for (const [id, formula, levelOf] of [
  ['response.reference-level', 'response/referenceLevel', referenceLevel],
  [
    'response.reference-level.network',
    'response/referenceLevelOf',
    ({ network: { topology, values }, air }: System) => {
      const { slots, network } = compile(topology);
      return referenceLevelOf(network(valuesOf(slots, values), true), air.density);
    },
  ],
] as const) {
  check(id, {
    formula,
    air: paperAir,
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
      const drivers = { ...physical({ fs, Vas, Qes, Qms: 4, Sd: 0.03, Re: 6 }, paperAir), Le: si('inductance', 1e-3) };
      const level = levelOf(closedBox({ drivers, netVolume: si('volume', Vas) }, paperAir));
      return level + 10 * Math.log10(6); // 1 W into 6 Ω is √6 V
    },
    expected: [92.16950213, 88.50567856, 87.84123729, 85.34043465, 89.98543668],
    unit: 'dB',
    tolerance: { absolute: 1e-7, why: 'values to ten digits' },
  });
}

check('response.features.impedance', {
  formula: 'response/features',
  air: workedAir,
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
