import { type Air, standardAir } from '@airspring/core/air';
import {
  completeDriver,
  type Driver,
  type DriverData,
  driver,
  driverParameters,
  levelHalfSpace,
  referenceEfficiency,
} from '@airspring/core/driver';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import workedBoxes from '../response/worked-boxes.json' with { type: 'json' };

/** The air of the source, in place of ours. */
const airOf = (density: number, speedOfSound: number): Air => ({
  ...standardAir,
  density: si('density', density),
  speedOfSound: si('speed', speedOfSound),
});
const smallsAir = airOf(1.18, 345);
const dryAir = airOf(1.2041, 343.2);

const completed = (data: DriverData): Driver => {
  const result = completeDriver(data);
  if (!result.ok) throw new Error('the published set does not suffice');
  return result.driver;
};

const small = { key: 'small1972direct', locator: 'reference efficiency expression' };
const closedForm = { relative: 1e-9, why: 'closed form, ten digits kept' };

const sets = {
  low: { fs: [19], Vas: [0.54], Qes: [0.35], efficiency: [0.01017393526], level: [92.16950213] },
  middle: {
    fs: [33, 25, 40],
    Vas: [0.057, 0.1, 0.05],
    Qes: [0.45, 0.4, 0.5],
    efficiency: [0.004376295237, 0.003755454341, 0.006152936392],
    level: [88.50567856, 87.84123729, 89.98543668],
  },
  high: { fs: [60.9], Vas: [0.00774], Qes: [0.796], efficiency: [0.002111456907], level: [85.34043465] },
};

for (const [name, { fs, Vas, Qes, efficiency, level }] of Object.entries(sets)) {
  check(`driver.efficiency.${name}`, {
    formula: 'driver/referenceEfficiency',
    air: smallsAir,
    source: small,
    status: 'derived',
    kind: 'example',
    given: { fs: { value: fs, unit: 'Hz' }, Vas: { value: Vas, unit: 'm³' }, Qes: { value: Qes, unit: '1' } },
    got: ({ fs, Vas, Qes }) => referenceEfficiency({ fs: si('frequency', fs), Vas: si('volume', Vas), Qes }, smallsAir),
    expected: efficiency,
    unit: '1',
    tolerance: closedForm,
  });
  check(`driver.level.${name}`, {
    formula: 'driver/levelHalfSpace',
    air: smallsAir,
    source: { key: 'small1972direct', locator: 'half space, p² = P·ρ·c/(2π·r²)' },
    status: 'derived',
    kind: 'example',
    given: { power: { value: efficiency, unit: 'W' } },
    got: ({ power }) => levelHalfSpace(si('power', power), smallsAir),
    expected: level,
    unit: 'dB',
    tolerance: { absolute: name === 'high' ? 5e-9 : 5e-8, why: 'powers of ten digits' },
  });
}

const student = { key: 'student2023', locator: 'driver data list on page 1' };
/** The physical part of the published set. */
const printed = driver({
  Sd: si('coneArea', (Math.PI * 0.105 ** 2) / 4),
  Mms: '9.3 g',
  Cms: '0.735 mm/N',
  Rms: si('mechanicalResistance', Math.sqrt(0.0093 / 0.000735) / 3.35),
  Re: '5.9 ohm',
  Bl: '5.13 T·m',
});
const printedGiven = {
  effectiveDiameter: { value: 0.105, unit: 'm' },
  Mms: { value: 0.0093, unit: 'kg' },
  Cms: { value: 0.000735, unit: 'm/N' },
  Qms: { value: 3.35, unit: '1' },
  Re: { value: 5.9, unit: 'ohm' },
  Bl: { value: 5.13, unit: 'T·m' },
};

check('driver.parameters.consistency', {
  formula: 'driver/driverParameters',
  source: student,
  status: 'seen',
  kind: 'example',
  given: printedGiven,
  got: () => {
    const { fs, Qes, Qts } = driverParameters(printed);
    return [fs, Qes, Qts];
  },
  printed: ['60.9', '0.796', '0.643'],
  unit: 'Hz, 1, 1',
  tolerance: {
    relative: 0.005,
    why: 'Mms has two digits: half of the last is 0.54 % of it, half of that in fs and in Qes; Bl and Cms add 0.2 %',
  },
});

check('driver.parameters.Vas', {
  formula: 'driver/driverParameters',
  air: smallsAir,
  source: student,
  status: 'seen',
  kind: 'example',
  given: printedGiven,
  got: () => driverParameters(printed, smallsAir).Vas * 1000,
  // The printed area, compliance and this air give 7.740, so that the sheet was computed with it.
  printed: '7.74',
  unit: 'L',
});

check('driver.parameters.level', {
  formula: 'driver/driverParameters',
  air: smallsAir,
  source: student,
  status: 'seen',
  kind: 'example',
  given: printedGiven,
  got: () => driverParameters(printed, smallsAir).levelHalfSpaceOneWatt,
  printed: '85.3',
  unit: 'dB',
});

check('driver.parameters.efficiency', {
  formula: 'driver/referenceEfficiency',
  air: smallsAir,
  source: student,
  status: 'seen',
  kind: 'example',
  given: { fs: { value: 60.9, unit: 'Hz' }, Vas: { value: 7.74, unit: 'L' }, Qes: { value: 0.796, unit: '1' } },
  got: ({ fs, Vas, Qes }) =>
    referenceEfficiency({ fs: si('frequency', fs), Vas: si('volume', Vas / 1000), Qes }, smallsAir),
  printed: '0.00209',
  unit: '1',
  tolerance: {
    relative: 0.011,
    why: '0.00211 with the 345 m/s of the papers; the speed of sound behind the print is not told, 346.2 m/s would meet it',
  },
});

check('driver.parameters.level-of-voltage', {
  formula: 'driver/driverParameters',
  air: dryAir,
  source: {
    key: 'mpmath',
    locator: 'the same driver in a closed box of 36 L, fc 67.2 Hz, Qtc 0.711; script worked-boxes.py',
  },
  status: 'derived',
  kind: 'program',
  given: { ...printedGiven, f: { value: workedBoxes.closed.frequencies, unit: 'Hz' } },
  got: ({ f }) => {
    const ratio = (f / 67.1583197) ** 2;
    const highPass = ratio / Math.hypot(1 - ratio, Math.sqrt(ratio) / 0.7106263922);
    return driverParameters(printed, dryAir).levelHalfSpace2V83 + 20 * Math.log10(highPass);
  },
  expected: workedBoxes.closed.level,
  unit: 'dB',
  tolerance: { absolute: 1e-8, why: 'fc and Qtc of ten digits' },
});

check('driver.parameters.added-mass', {
  formula: 'driver/driverParameters',
  air: dryAir,
  source: { key: 'small1972direct', locator: 'Mms = m/((fs/fm)² − 1); Cms = 1/((2π·fs)²·Mms); Vas = ρ·c²·Sd²·Cms' },
  status: 'derived',
  kind: 'example',
  given: {
    Sd: { value: 0.008659014751, unit: 'm²' },
    Mms: { value: [0.0093, 0.03], unit: 'kg' },
    Cms: { value: [0.0007343831936, 0.0009381591078], unit: 'm/N' },
  },
  got: ({ Sd, Mms, Cms }) =>
    driverParameters({ ...printed, Sd: si('coneArea', Sd), Mms: si('mass', Mms), Cms: si('compliance', Cms) }, dryAir)
      .Vas * 1000,
  expected: [7.809384448, 9.976324635],
  unit: 'L',
  tolerance: { relative: 1e-8, why: 'inputs of ten digits' },
});

check('driver.efficiency.mechanical', {
  formula: 'driver/driverParameters',
  air: dryAir,
  source: {
    key: 'small1972direct',
    locator: 'reference efficiency from the mechanical side, ρ·B²l²·Sd²/(2π·c·Mms²·Re)',
  },
  status: 'derived',
  kind: 'example',
  given: printedGiven,
  got: () => driverParameters({ ...printed, Sd: si('coneArea', 0.008659014751) }, dryAir).referenceEfficiency,
  expected: 0.002159181693,
  unit: '1',
  tolerance: closedForm,
});

check('driver.read.vas-in-units', {
  formula: 'driver/driver',
  air: dryAir,
  source: { key: 'small1972direct', locator: 'Vas = ρ·c²·Sd²·Cms' },
  status: 'derived',
  kind: 'example',
  given: { Mms: { value: 9.3, unit: 'g' }, Cms: { value: 0.7343831936, unit: 'mm/N' } },
  got: ({ Mms, Cms }) => {
    const units = { ...printed, Sd: '86.59014751 cm²', Mms: `${Mms} g`, Cms: `${Cms} mm/N` } as const;
    return driverParameters(driver(units), dryAir).Vas * 1000;
  },
  expected: 7.809384448,
  unit: 'L',
  tolerance: { relative: 1e-8, why: 'inputs of ten digits' },
});

check('driver.completion.student', {
  formula: 'driver/completeDriver',
  source: student,
  status: 'seen',
  kind: 'example',
  given: {
    fs: { value: 60.9, unit: 'Hz' },
    Qms: { value: 3.35, unit: '1' },
    Qes: { value: 0.796, unit: '1' },
    Re: { value: 5.9, unit: 'ohm' },
    Mms: { value: 0.0093, unit: 'kg' },
    coneDiameter: { value: 0.105, unit: 'm' },
  },
  got: ({ fs, Qms, Qes, Re, Mms, coneDiameter }) => {
    const { Bl, Cms } = completed({
      fs: si('frequency', fs),
      Qms,
      Qes,
      Re: si('resistance', Re),
      Mms: si('mass', Mms),
      coneDiameter: si('length', coneDiameter),
    });
    return [Bl, Cms];
  },
  printed: ['5.13', '0.000735'],
  unit: 'T·m, m/N',
  tolerance: { relative: 0.006, why: 'Mms has two digits: half of the last is 0.54 % of it, and of Cms' },
});

check('driver.completion.Vas', {
  formula: 'driver/completeDriver',
  air: smallsAir,
  source: student,
  status: 'seen',
  kind: 'example',
  given: {
    fs: { value: 60.9, unit: 'Hz' },
    Vas: { value: 7.74, unit: 'L' },
    coneDiameter: { value: 0.105, unit: 'm' },
  },
  got: ({ fs, Vas, coneDiameter }) => {
    const { Mms, Cms } = completed({
      fs: si('frequency', fs),
      Vas: si('volume', Vas / 1000),
      coneDiameter: si('length', coneDiameter),
      Qms: 3.35,
      Qes: 0.796,
      Re: '5.9 ohm',
      sheetAir: smallsAir,
    });
    return [Mms, Cms];
  },
  printed: ['0.0093', '0.000735'],
  unit: 'kg, m/N',
});

check('driver.read.every-field', {
  formula: 'driver/driver',
  source: { key: 'small1972direct', locator: 'the driver parameters, in the units of a sheet and in those of the SI' },
  status: 'derived',
  kind: 'example',
  given: { units: { value: 'cm², g, mm/N, kg/s, ohm, N/A', unit: '' } },
  got: () => {
    const read = driver({
      ...{ Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N' },
      ...{ Rms: '3.6 kg/s', Re: '5.6 ohm', Bl: '14.3 N/A' },
    });
    return [read.Sd, read.Mms, read.Cms, read.Rms, read.Re, read.Bl];
  },
  expected: [0.033, 0.086, 0.0004, 3.6, 5.6, 14.3],
  unit: 'SI',
  tolerance: { relative: 1e-15, why: 'powers of ten' },
});

check('driver.parameters.Qms', {
  formula: 'driver/driverParameters',
  source: { key: 'small1972direct', locator: 'Qms = √(Mms/Cms)/Rms' },
  status: 'derived',
  kind: 'example',
  given: { Rms: { value: 1.25, unit: 'N·s/m' } },
  got: ({ Rms }) => driverParameters({ ...printed, Rms: si('mechanicalResistance', Rms) }).Qms,
  expected: 2.845691336683,
  unit: '1',
  tolerance: { relative: 1e-12, why: 'thirteen digits' },
});

check('driver.completion.every-field', {
  formula: 'driver/completeDriver',
  air: dryAir,
  source: { key: 'small1972direct', locator: 'definitions of the parameters; the efficiency from the mechanical side' },
  status: 'derived',
  kind: 'example',
  given: {
    fs: { value: 60.9, unit: 'Hz' },
    Qms: { value: 3.35, unit: '1' },
    Qes: { value: 0.796, unit: '1' },
    Re: { value: 5.9, unit: 'ohm' },
    Mms: { value: 9.3, unit: 'g' },
    coneDiameter: { value: 105, unit: 'mm' },
  },
  got: ({ fs, Qms, Qes, Re, Mms, coneDiameter }) => {
    const result = completeDriver({
      ...{ fs: `${fs} Hz`, Qms, Qes, Re: `${Re} ohm`, Mms: `${Mms} g`, coneDiameter: `${coneDiameter} mm` },
      sheetAir: dryAir,
    });
    if (!result.ok) throw new Error('the set suffices');
    const { driver: one, parameters: of, derived } = result;
    const found = ['Sd', 'Cms', 'Rms', 'Bl', 'Qts', 'Vas'].map((name) => derived.find(({ field }) => field === name));
    return [
      ...[one.Sd, one.Mms, one.Cms, one.Rms, one.Re, one.Bl],
      ...[of.fs, of.Qms, of.Qes, of.Qts, of.Vas, of.referenceEfficiency],
      ...[of.levelHalfSpaceOneWatt, of.levelHalfSpace2V83],
      ...found.map((one) => one?.value ?? Number.NaN),
    ];
  },
  expected: [
    ...[0.008659014751457, 0.0093, 0.0007343831936176, 1.062270944008, 5.9, 5.13581683701],
    ...[60.9, 3.35, 0.796, 0.643174143753, 0.007809384447926, 0.002164081002497],
    ...[85.51243488456, 86.83964347862],
    ...[0.008659014751457, 0.0007343831936176, 1.062270944008, 5.13581683701, 0.643174143753, 0.007809384447926],
  ],
  unit: 'SI, dB',
  tolerance: { relative: 2e-12, why: 'thirteen digits' },
});
