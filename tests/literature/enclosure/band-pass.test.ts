import { fourthOrderBandPass, parallelBandPass, seriesBandPass } from '@airspring/core/enclosure';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compiledSystem, features, passband, probeColumns, respond } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { flat, largest, worst } from '../../circuit/compare.js';
import { checkIn } from '../../ledger/check.js';
import { flowOf } from '../complex.js';
import { type BandPassRow, boxes, driverOf, responses } from './band-pass.js';
import table from './band-pass.json' with { type: 'json' };
import { paperAir } from './textbook.js';

const check = checkIn(paperAir);

const source = { key: 'geddes1989', locator: 'symmetrical fourth-order band-pass: S, bandwidth and ripple' };
const derived = { status: 'derived', kind: 'table' } as const;
const column = (name: string) => table.rows.map((row) => row[table.columns.indexOf(name)]!);
const [fs, Qts, Vas] = [30, 0.35, 60];
/** The level that the driver approaches in a closed box, for 1 V: ρ Bl Sd/(2π Mms Re). */
const driverLevel = (row: BandPassRow): number => {
  const { Bl, Sd, Mms, Re } = driverOf(row);
  return 20 * Math.log10((1.18 * Bl * Sd) / (2 * Math.PI * Mms * Re) / 20e-6);
};

/** The symmetrical box: the front is tuned to the resonance in the rear chamber. */
const symmetrical = (S: number, Qtc: number): BandPassRow => ({
  fs,
  Qts,
  Vas,
  rearVolume: Vas / ((Qtc / Qts) ** 2 - 1),
  frontVolume: (2 * S * Qts) ** 2 * Vas,
  frontTuning: (Qtc / Qts) * fs,
});
/** The band of the box around the level at its middle, and its ripple. */
function figures(S: number, Qtc: number, drop?: number) {
  const row = symmetrical(S, Qtc);
  const middle = si('frequency', row.frontTuning);
  const system = boxes.fourth(row);
  const band = { from: si('frequency', 10), to: si('frequency', 400) };
  const found = passband(system, { ...band, reference: { frequency: middle }, ...(drop !== undefined && { drop }) });
  const { lower = Number.NaN, upper = Number.NaN } = found.ok ? found : {};
  const { peaks } = features(system, { ...band, reference: { frequency: middle } });
  return {
    lower: lower / middle,
    upper: upper / middle,
    bandwidth: ((upper - lower) * Qts) / fs,
    ripple: Math.max(0, ...peaks.map(({ value }) => value)),
    gain: (respond(system, [middle]).levelHalfSpace[0] as number) - driverLevel(row),
  };
}
const given = { S: { value: column('S'), unit: '1' }, Qtc: { value: column('Qtc'), unit: '1' } };
for (const [name, formula, unit, absolute] of [
  ['lower', 'response/passband', 'f/f0', 1e-10],
  ['upper', 'response/passband', 'f/f0', 1e-9],
  ['ripple', 'enclosure/fourthOrderBandPass', 'dB', 1e-9],
  ['gain', 'enclosure/fourthOrderBandPass', 'dB', 5e-9],
] as const) {
  check(`enclosure.band-pass.${name}`, {
    ...derived,
    source,
    formula,
    given,
    got: ({ S, Qtc }) => figures(S, Qtc)[name],
    expected: column(name),
    unit,
    tolerance: { absolute, why: 'values to ten digits, the greatest of them with eight decimals' },
  });
}
// The flattest box, S = 1/√2: |p|² = 1/(1 + x⁴), where x is f/f0 − f0/f over its width at half power. At the front tuning the cone
// stands still, so that the impedance is that of the coil at rest.
const falls = { f3: 10 * Math.log10(2), f6: 6, f10: 10 } as const;
for (const [name, fall] of Object.entries(falls) as [keyof typeof falls, number][]) {
  const y = (Qtc: number) => (Math.SQRT1_2 / Qtc) * (10 ** (fall / 10) - 1) ** 0.25;
  check(`response.features.band-pass.${name}`, {
    ...derived,
    source: { ...source, locator: 'low-pass of second order mapped to a band' },
    formula: 'response/features',
    given: { Qtc: { value: [0.5, 0.8, 1.1], unit: '1' }, fall: { value: fall, unit: 'dB' } },
    got: ({ Qtc }) => {
      const row = symmetrical(Math.SQRT1_2, Qtc);
      const found = features(boxes.fourth(row), { reference: 'maximum', to: '400 Hz' });
      const [least] = found.impedanceMinima;
      const [lower, upper] = [found[name]!, found.upper![name]!].map((f) => f / row.frontTuning) as [number, number];
      // One number of all four, so that each of them counts.
      return lower - 2 * upper + 4 * (least!.frequency / row.frontTuning) + 8 * (least!.value / 5.6);
    },
    expected: [0.5, 0.8, 1.1].map((Qtc) => {
      const half = y(Qtc) / 2;
      const root = Math.hypot(half, 1);
      return root - half - 2 * (root + half) + 4 + 8;
    }),
    unit: 'fl/f0 − 2 fu/f0 + 4 fmin/f0 + 8 Zmin/Re',
    tolerance: { absolute: 5e-12, why: 'roots in double precision' },
  });
}

// Read in print: 0.7206 and 1.25 dB are those of a fall by 3.000 dB from the level in the middle.
check('enclosure.band-pass.printed.bandwidth', {
  formula: 'response/passband',
  source: { key: 'bandpasspage1998', locator: 'list of S and b' },
  status: 'seen',
  kind: 'table',
  given: { S: { value: [0.7, 0.6, 0.5], unit: '1' }, drop: { value: 3, unit: 'dB' } },
  got: ({ S, drop }) => figures(S, 0.75, drop).bandwidth,
  printed: ['0.7206', '0.956', '1.2712'],
  unit: '(fu − fl) Qts/fs',
});
check('enclosure.band-pass.printed.ripple', {
  formula: 'enclosure/fourthOrderBandPass',
  source: { key: 'bandpasspage1998', locator: 'list of S and ripple' },
  status: 'seen',
  kind: 'table',
  given: { S: { value: [0.7, 0.6, 0.5], unit: '1' } },
  got: ({ S }) => figures(S, 0.75).ripple,
  printed: ['0.0', '0.35', '1.25'],
  unit: 'dB',
});

const grid = logarithmicGrid(5, 500, 101);
const unlike = { fs: 36, Qts: 0.42, Vas: 48, rearVolume: 44, frontVolume: 17, frontTuning: 77, rearTuning: 31 };
const middling = { fs: 30, Qts: 0.3, Vas: 90, rearVolume: 30, frontVolume: 30, frontTuning: 60, rearTuning: 25 };
const textbook = (name: keyof typeof boxes, row: BandPassRow) =>
  flowOf(responses[name](row), driverOf(row), row.fs, grid);
const swept = (name: keyof typeof boxes, row: BandPassRow) =>
  probeColumns(compiledSystem(boxes[name](row)), grid).radiatedFlow!;

const names = { fourth: 'fourthOrderBandPass', parallel: 'parallelBandPass', series: 'seriesBandPass' } as const;
for (const name of ['fourth', 'parallel', 'series'] as const) {
  const formula = `enclosure/${names[name]}` as const;
  const circuit = { key: 'geddes1989', locator: 'lumped circuit, its response function worked out' };
  const printed = textbook(name, unlike);
  check(`enclosure.band-pass.${name}.response`, {
    status: 'derived',
    kind: 'standard',
    source: circuit,
    formula,
    given: Object.fromEntries(Object.entries(unlike).map(([field, value]) => [field, { value, unit: 'Hz, 1, L' }])),
    got: () => flat(swept(name, unlike)),
    expected: flat(printed),
    unit: 'm³/s per V',
    tolerance: { absolute: 2e-14 * largest(printed), why: 'of the largest value; both in double precision' },
  });
  check(`enclosure.band-pass.${name}.level`, {
    status: 'derived',
    kind: 'standard',
    source: { ...circuit, locator: 'response function; pressure ρf|U| at 1 m in half space' },
    formula,
    given: { density: { value: 1.18, unit: 'kg/m³' }, driveVoltageRms: { value: 1, unit: 'V' } },
    got: () => respond(boxes[name](unlike), grid).levelHalfSpace,
    expected: Array.from(
      grid,
      (f, i) => 20 * Math.log10((1.18 * f * Math.hypot(printed.re[i]!, printed.im[i]!)) / 20e-6),
    ),
    unit: 'dB',
    tolerance: { absolute: 1e-12, why: 'both in double precision; far from the band little is left of two vents' },
  });
  test(`${name}: another box follows its response function as well`, () => {
    expect(worst(textbook(name, middling), swept(name, middling))).toBeLessThan(1e-9);
  });
}
for (const name of ['fourth', 'parallel'] as const) {
  const rows: readonly (BandPassRow & { levels: number[][] })[] = table[name];
  check(`enclosure.band-pass.${name}.levels`, {
    ...derived,
    source: {
      key: 'geddes1989',
      locator: `lumped band-pass of ${name === 'fourth' ? 'fourth' : 'sixth'} order without losses, solved apart`,
    },
    formula: `enclosure/${names[name]}`,
    given: {
      row: { value: rows.flatMap(({ levels }, i) => levels.map(() => i)), unit: '' },
      f: { value: rows.flatMap(({ levels }) => levels.map(([f]) => f!)), unit: 'Hz' },
    },
    got: ({ row, f }) => (respond(boxes[name](rows[row]!), [f]).levelHalfSpace[0] as number) - driverLevel(rows[row]!),
    expected: rows.flatMap(({ levels }) => levels.map(([, level]) => level!)),
    unit: 'dB',
    tolerance: { absolute: 1e-8, why: 'values to ten digits' },
  });
}

// V/(ρc²), 1/(ω²C), Q/(ωC), 1/(ωCQ), ωM/Q and the resonance in the rear chamber, worked out apart: see band-pass.py.
const losses = { frontQL: 7, frontQA: 40, frontQP: 60, frontVentArea: '60 cm²' } as const;
const rearLosses = { rearQL: 9, rearQA: 30, rearQP: 50, rearVentArea: '80 cm²' } as const;
const shared = { drivers: driverOf(unlike), rearVolume: '44 L', frontVolume: '17 L', frontTuning: '77 Hz' } as const;
const closed = { ...shared, ...losses, rearFillGain: 1.2, rearQL: 9, rearQA: 30 };
const vented = { ...shared, ...losses, ...rearLosses, rearTuning: '31 Hz' } as const;
const front = ['Cab front', 'leak front', 'absorption front', 'vent front', 'ventLoss front', 'perVentArea front'];
const rear = front.map((name) => name.replace('front', 'rear'));
const frontExpected = [
  1.2103994674242345e-7, 119536.00096141793, 426.9142891479212, 35.296373711404854, 284.6095260986141,
  166.66666666666666,
];
const rearExpected = [
  3.1327986215686064e-7, 147492.0011862657, 546.2666710602433, 84.13649123766982, 327.760002636146, 125.0,
];
const closedExpected = [3.759358345882327e-7, 76600.76562770258, 283.7065393618614];
const numbersOf = ({ network: { values } }: ReturnType<typeof boxes.fourth>, list: readonly string[]) =>
  list.map((name) => values[name] as number);
for (const [name, formula, system, list, expected] of [
  [
    'fourth',
    names.fourth,
    () => fourthOrderBandPass(closed, paperAir),
    [...rear.slice(0, 3), ...front],
    [...closedExpected, ...frontExpected],
  ],
  [
    'parallel',
    names.parallel,
    () => parallelBandPass(vented, paperAir),
    [...rear, ...front],
    [...rearExpected, ...frontExpected],
  ],
  [
    'series',
    names.series,
    () => seriesBandPass(vented, paperAir),
    [...rear, ...front],
    [...rearExpected, ...frontExpected],
  ],
] as const) {
  check(`enclosure.band-pass.${name}.losses`, {
    status: 'derived',
    kind: 'standard',
    source: { key: 'small1973vented1', locator: 'definitions of the box losses, for each chamber' },
    formula: `enclosure/${formula}`,
    given: { QL: { value: [7, 9].join(', '), unit: 'front, rear' } },
    got: () => numbersOf(system(), list),
    expected,
    unit: 'm³/Pa, Pa·s/m³, kg/m⁴, 1/m²',
    tolerance: { relative: 1e-12, why: 'closed form, to fourteen digits' },
  });
}

describe('what a band-pass has', () => {
  const system = boxes.fourth(symmetrical(0.6, 0.75));
  test('no asymptote: the features say so, and count from the maximum where they are asked to', () => {
    expect(() => features(system)).toThrow(/'maximum'/);
    const { f3, f6, upper, ripple, referenceLevel } = features(system, { reference: 'maximum' });
    for (const [f, fall] of [
      [f3, 3.0103],
      [upper?.f3, 3.0103],
      [f6, 6],
      [upper?.f6, 6],
    ] as const) {
      expect(respond(system, [f!]).levelHalfSpace[0]).toBeCloseTo(referenceLevel - fall, 5);
    }
    expect(f6).toBeLessThan(f3!);
    expect(upper!.f6).toBeGreaterThan(upper!.f3!);
    expect(ripple).toBeCloseTo(3.0103, 4);
  });
  test('a level that it never reaches is told', () => {
    expect(passband(system, { reference: { level: '300 dB' } })).toMatchObject({ ok: false });
  });
});
