import { standardAir } from '@airspring/core/air';
import { driver, group } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import {
  amplifierHeat,
  classBHeat,
  coilTemperatureLimit,
  damageLimit,
  greatestLevel,
  greatestLevelWithLosses,
  greatestProgrammeLevel,
  hotResistance,
  type Limit,
  motorTravelLimit,
  pinkProgramme,
  programme,
  programmeHeat,
  respondWithHeat,
  suspensionTravelLimit,
  temperatureAfter,
  thermalModel,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import fixtures from './heat.json' with { type: 'json' };

const air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343.2) };
const check = checkIn(air);
const one = driver({
  Sd: '330 cm²',
  Mms: '85 g',
  Cms: '0.62 mm/N',
  Rms: '2.4 kg/s',
  Re: '5.6 Ω',
  Le: '0.8 mH',
  Bl: '13.5 T·m',
  Xmax: '6 mm',
});
const ventArea = si('area', Math.PI * 0.0375 ** 2);
const box = ventedBox({ drivers: one, netVolume: '45 L', fb: '27 Hz', QL: 10, ventArea }, air);
/** Two of the same boxes in parallel, in one: every coil does what that of one box does. */
const twice = ventedBox(
  { drivers: group(one, { parallel: 2 }), netVolume: '90 L', fb: '27 Hz', QL: 10, ventArea: si('area', 2 * ventArea) },
  air,
);
const stages = { coilToMagnet: '3.5 K/W', magnetToAir: '1.5 K/W', coilTime: '6 s', magnetTime: '1200 s' } as const;
const heat = thermalModel(stages);
const lossOf = (K: number) => quadraticLoss({ outward: si('ratio', K) });
const loss = lossOf(1.5);
const scipy = (locator: string) => ({ key: 'scipy', locator: `${locator}; script heat.py` });
const program = { status: 'derived', kind: 'program' } as const;

check('limit.hot-resistance.example', {
  formula: 'limit/hotResistance',
  source: { key: 'hughes2008', locator: 'example 3.25: coil of 10 Ω at 20 °C on 10 V, 0.95 A when hot' },
  status: 'seen',
  kind: 'example',
  given: { rise: { value: 33.4 - 20, unit: 'K' } },
  got: ({ rise }) => hotResistance(si('resistance', 10), heat, rise),
  unit: 'Ω',
  printed: '10.53',
});

check('limit.hot-resistance.model', {
  formula: 'limit/thermalModel',
  part: 'the coefficient of copper',
  source: { key: 'hughes2008', locator: 'example 3.25: temperature of the coil from its resistance' },
  status: 'seen',
  kind: 'example',
  given: { V: { value: 10, unit: 'V' }, I: { value: 0.95, unit: 'A' } },
  got: ({ V, I }) => 20 + (V / I / 10 - 1) / thermalModel(stages).coefficient,
  unit: '°C',
  printed: '33.4',
});

const rises = [50, 100, 150, 200];
check('limit.hot-resistance.table', {
  formula: 'limit/hotResistance',
  source: { key: 'numpy', locator: '20 lg (1 + 0.00393 θ), level loss at fixed voltage where Re governs the current' },
  ...program,
  given: { rise: { value: rises, unit: 'K' } },
  got: ({ rise }) => 20 * Math.log10(hotResistance(si('resistance', 1), heat, rise)),
  expected: [1.55825, 2.87902, 4.02521, 5.03763],
  unit: 'dB',
  tolerance: { absolute: 5e-6, why: 'five decimals' },
});

const { warming } = fixtures;
const warmed = {
  power: { value: warming.power, unit: 'W' },
  time: { value: warming.time, unit: 's' },
};
for (const part of ['coil', 'magnet'] as const) {
  check(`limit.temperature-after.${part}`, {
    formula: 'limit/temperatureAfter',
    source: scipy('heat flow into two capacities over time, solve_ivp'),
    ...program,
    given: warmed,
    got: ({ power, time }) => temperatureAfter(heat, { power: si('power', power), time: si('time', time) })[part],
    expected: warming[part],
    unit: 'K',
    tolerance: { relative: 1e-11, why: 'relative tolerance of the solver over time' },
  });
}

const { hot } = fixtures;
const hotGiven = {
  f: { value: hot.f, unit: 'Hz' },
  volts: { value: hot.volts, unit: 'V' },
  K: { value: hot.K, unit: '1' },
};
const hotColumns = {
  rise: ['coilRise', 'K'],
  level: ['levelHalfSpace', 'dB'],
  compression: ['compression', 'dB'],
  current: ['currentRms', 'A'],
  travel: ['displacementPeak', 'm'],
} as const;
const respondTo = (system: typeof box, { f, volts, K }: { f: number; volts: number; K: number }) =>
  respondWithHeat(system, [f], { driveVoltageRms: si('voltageRms', volts), heat, ...(K > 0 && { loss: lossOf(K) }) });
for (const [name, [field, unit]] of Object.entries(hotColumns)) {
  check(`limit.respond-with-heat.${name}`, {
    formula: 'limit/respondWithHeat',
    source: scipy('one sine in the circuit, coil temperature and speed in the vent by fsolve'),
    ...program,
    given: hotGiven,
    got: (row) => respondTo(box, row)[field][0]!,
    expected: hot[name as keyof typeof hotColumns],
    unit,
    tolerance:
      unit === 'dB'
        ? { absolute: 1e-12, why: 'roots by two programs' }
        : { relative: 1e-12, why: 'roots by two programs' },
  });
}
const ratio = hot.rise.map((rise) => 1 + 0.00393 * rise);
const share = {
  resistanceRatio: ratio,
  magnetRise: hot.rise.map((x) => (x * 1.5) / 5),
  power: hot.rise.map((x) => x / 5),
};
const shareUnits = { resistanceRatio: '1', magnetRise: 'K', power: 'W' };
for (const field of ['resistanceRatio', 'magnetRise', 'power'] as const) {
  check(`limit.respond-with-heat.${field}`, {
    formula: 'limit/respondWithHeat',
    source: scipy('the same: two such boxes in parallel, each coil of them'),
    ...program,
    given: hotGiven,
    got: (row) => respondTo(twice, row)[field][0]!,
    expected: share[field],
    unit: shareUnits[field],
    tolerance: { relative: 1e-12, why: 'roots by two programs' },
  });
}

const limitNamed = (name: string): { readonly limits: readonly Limit[]; readonly options: object } => {
  const far = [voltageLimit('42 V')];
  if (name === 'travel') return { limits: [...far, ...travelLimit(one)], options: {} };
  if (name === 'coil temperature')
    return { limits: [...far, coilTemperatureLimit(one, { heat, rise: '80 K' })], options: {} };
  if (name === 'vent compression') return { limits: far, options: { ventCompression: '1.5 dB' } };
  return { limits: far, options: { amplifier: { supply: '60 V', heat: '60 W' } } };
};
const { reached } = fixtures;
const reachedGiven = {
  name: { value: 'in turn', unit: '' },
  f: { value: reached.map(({ f }) => f), unit: 'Hz' },
};
for (const [field, unit] of [
  ['driveVoltageRms', 'V'],
  ['levelHalfSpace', 'dB'],
] as const) {
  check(`limit.greatest-with-losses.${field}`, {
    formula: 'limit/greatestLevelWithLosses',
    source: scipy(
      'drives at which travel, coil temperature, vent compression and amplifier heat are reached, by brentq',
    ),
    ...program,
    given: reachedGiven,
    got: ({ f }) => {
      const { name } = reached.find((row) => row.f === f)!;
      const { limits, options } = limitNamed(name);
      const found = greatestLevelWithLosses(box, limits, [f], { loss, heat, ...options });
      return found.binding[0] === name ? found[field][0]! : Number.NaN;
    },
    expected: reached.map((row) => (unit === 'V' ? row.volts : row.level)),
    unit,
    tolerance:
      unit === 'V' ? { relative: 1e-12, why: 'roots within roots' } : { absolute: 1e-12, why: 'roots within roots' },
  });
}
check('limit.greatest-with-losses.least', {
  formula: 'limit/greatestLevelWithLosses',
  source: scipy('the frequency of the lowest level among two, at 40 V'),
  ...program,
  given: { volts: { value: 40, unit: 'V' } },
  got: ({ volts: most }) => {
    const limits = [voltageLimit(si('voltageRms', most))];
    const { frequency, levelHalfSpace, driveVoltageRms } = greatestLevelWithLosses(box, limits, [27, 35], {
      loss,
      heat,
    }).least;
    return [frequency, levelHalfSpace, driveVoltageRms];
  },
  expected: [27, hot.level[6]!, 40],
  unit: 'Hz, dB, V',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});
check('limit.coil-temperature-limit', {
  formula: 'limit/coilTemperatureLimit',
  source: scipy('drive at which the coil settles at 80 K, by brentq'),
  ...program,
  given: { f: { value: 80, unit: 'Hz' }, rise: { value: 80, unit: 'K' } },
  got: ({ f, rise }) =>
    greatestLevelWithLosses(box, [coilTemperatureLimit(one, { heat, rise: si('temperatureDifference', rise) })], [f], {
      loss,
      heat,
    }).driveVoltageRms[0]!,
  expected: reached[1]!.volts,
  unit: 'V',
  tolerance: { relative: 1e-12, why: 'roots within roots' },
});
for (const [i, field] of (['compression', 'coilRise'] as const).entries()) {
  check(`limit.greatest-with-losses.${field}`, {
    formula: 'limit/greatestLevelWithLosses',
    source: scipy('one sine in the circuit, coil temperature and speed in the vent by fsolve'),
    ...program,
    given: { f: { value: [27, 35], unit: 'Hz' } },
    got: ({ f }) => greatestLevelWithLosses(box, [voltageLimit('40 V')], [f], { loss, heat })[field][0]!,
    expected: i === 0 ? hot.compression.slice(6) : hot.rise.slice(6),
    unit: i === 0 ? 'dB' : 'K',
    tolerance: { relative: 1e-12, why: 'roots by two programs' },
  });
}

const { frequencies, share: shares, crest, volts } = fixtures.programme;
const played = { frequencies, share: shares, crestFactor: si('ratio', crest) };
const at = { programme: played, driveVoltageRms: si('voltageRms', volts), heat };
const spectrum = { E: { value: volts, unit: 'V' }, crest: { value: crest, unit: '1' } } as const;
const mean = (field: 'coilRise' | 'power' | 'levelHalfSpace', expected: number, unit: string) =>
  check(`limit.programme-heat.${field}`, {
    formula: 'limit/programmeHeat',
    source: scipy('a spectrum of five lines with one temperature of the coil, by brentq'),
    ...program,
    given: spectrum,
    got: () => programmeHeat(box, at)[field],
    expected,
    unit,
    tolerance: { relative: 1e-12, why: 'roots by two programs' },
  });
mean('coilRise', fixtures.programme.rise, 'K');
mean('power', fixtures.programme.power, 'W');
mean('levelHalfSpace', fixtures.programme.level, 'dB');
check('limit.programme-heat.compression', {
  formula: 'limit/programmeHeat',
  source: scipy('the same, line by line'),
  ...program,
  given: spectrum,
  got: () => programmeHeat(box, at).compression,
  expected: fixtures.programme.compression,
  unit: 'dB',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});
check('limit.programme-heat.ratios', {
  formula: 'limit/programmeHeat',
  source: scipy('the same: two such boxes in parallel at the same voltage, R over Re and rise of the magnet'),
  ...program,
  given: spectrum,
  got: () => {
    const { resistanceRatio, magnetRise } = programmeHeat(twice, at);
    return [resistanceRatio, magnetRise];
  },
  expected: [1 + 0.00393 * fixtures.programme.rise, fixtures.programme.rise * 0.3],
  unit: '1, K',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});

const whole = { programme: played };
for (const field of ['driveVoltageRms', 'drives'] as const) {
  check(`limit.greatest-programme.travel.${field}`, {
    formula: 'limit/greatestProgrammeLevel',
    source: scipy('rms voltage at which crest factor times rms travel is Xmax, coil cold and hot, by brentq'),
    ...program,
    given: { crest: { value: crest, unit: '1' } },
    got: () =>
      [whole, { ...whole, heat }].map((options) => {
        const { drives, driveVoltageRms } = greatestProgrammeLevel(box, travelLimit(one), options);
        return field === 'drives' ? drives.travel! : driveVoltageRms;
      }),
    expected: fixtures.greatestProgramme.travel,
    unit: 'V',
    tolerance: { relative: 1e-12, why: 'roots by two programs' },
  });
}
check('limit.greatest-programme.temperature', {
  formula: 'limit/greatestProgrammeLevel',
  source: scipy('rms voltage at which the coil settles at 90 K, by brentq; and that rise'),
  ...program,
  given: { rise: { value: 90, unit: 'K' } },
  got: ({ rise }) => {
    const limits = [coilTemperatureLimit(one, { heat, rise: si('temperatureDifference', rise) })];
    const { drives, coilRise } = greatestProgrammeLevel(box, limits, { programme: played, heat });
    return [drives['coil temperature']!, coilRise];
  },
  expected: [fixtures.greatestProgramme.temperature, 90],
  unit: 'V, K',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});
check('limit.greatest-programme.level', {
  formula: 'limit/greatestProgrammeLevel',
  source: scipy('level of the spectrum at that voltage, which a peak voltage limits'),
  ...program,
  given: { ...spectrum, limit: { value: (volts * crest) / Math.SQRT2, unit: 'V, a sine of the same peak' } },
  got: ({ limit }) => {
    const limits = [voltageLimit(si('voltageRms', limit))];
    const { levelHalfSpace, drives } = greatestProgrammeLevel(box, limits, { ...whole, heat });
    return [levelHalfSpace, drives['amplifier voltage']!];
  },
  expected: [fixtures.programme.level, volts],
  unit: 'dB, V',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});

const { classB, amplifier, curves } = fixtures;
check('limit.class-b.quadrature', {
  formula: 'limit/classBHeat',
  source: scipy('mean of (rail − voltage) times current over a period, quad'),
  ...program,
  given: {
    supply: { value: classB.supply, unit: 'V' },
    volts: { value: classB.volts, unit: 'V' },
    current: { value: classB.current, unit: 'A' },
    phase: { value: classB.phase, unit: 'rad' },
  },
  got: ({ supply, volts: u, current, phase }) => classBHeat(supply, current, u * current * Math.cos(phase)),
  expected: classB.heat,
  unit: 'W',
  tolerance: { relative: 1e-12, why: 'quadrature' },
});
check('limit.class-b.greatest', {
  formula: 'limit/classBHeat',
  source: {
    key: 'sedra2015',
    locator: 'class B: greatest dissipation 2 Vs²/(π² R), at a peak of 2 Vs/π (from memory)',
  },
  status: 'memory',
  kind: 'example',
  given: { supply: { value: [20, 40], unit: 'V' }, R: { value: [8, 4], unit: 'Ω' } },
  got: ({ supply, R }) => {
    const e = ((2 / Math.PI) * supply) / Math.SQRT2;
    return classBHeat(supply, e / R, e ** 2 / R);
  },
  expected: [10.1321184, 81.0569469],
  unit: 'W',
  tolerance: { relative: 1e-8, why: 'nine digits' },
});
for (const field of ['heat', 'delivered'] as const) {
  check(`limit.amplifier-heat.${field}`, {
    formula: 'limit/amplifierHeat',
    source: scipy('the same of the current that the circuit takes'),
    ...program,
    given: { f: { value: amplifier.f, unit: 'Hz' }, volts: { value: amplifier.volts, unit: 'V' } },
    got: ({ f, volts: e }) =>
      amplifierHeat(box, [f], { supply: '40 V', driveVoltageRms: si('voltageRms', e) })[field][0]!,
    expected: field === 'heat' ? amplifier.heat : amplifier.delivered,
    unit: 'W',
    tolerance: { relative: 1e-12, why: 'quadrature' },
  });
}

check('limit.curves.motor', {
  formula: 'limit/motorTravelLimit',
  source: scipy('lopsided curve of the force factor, brentq on either side; that 82 % is the threshold is recalled'),
  ...program,
  given: { bl: { value: curves.bl.join(', '), unit: 'T·m/mᵏ' } },
  got: () => motorTravelLimit({ coefficients: curves.bl, upTo: '12 mm' })[0]!.greatestRms * Math.SQRT2,
  expected: curves.blTravel,
  unit: 'm',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});
check('limit.curves.suspension', {
  formula: 'limit/suspensionTravelLimit',
  source: scipy('lopsided curve of the stiffness, brentq on either side; that 75 % is the threshold is recalled'),
  ...program,
  given: { stiffness: { value: curves.stiffness.join(', '), unit: 'N/m per mᵏ' } },
  got: () => suspensionTravelLimit({ coefficients: curves.stiffness, upTo: '12 mm' })[0]!.greatestRms * Math.SQRT2,
  expected: curves.stiffnessTravel,
  unit: 'm',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});
check('limit.damage', {
  formula: 'limit/damageLimit',
  source: scipy('drive at which the travel is the mechanical limit less a fifth, by brentq'),
  ...program,
  given: { f: { value: fixtures.damage.f, unit: 'Hz' }, Xmech: { value: fixtures.damage.Xmech, unit: 'm' } },
  got: ({ f, Xmech }) =>
    greatestLevel(box, [damageLimit({ Xmech: si('displacementPeak', Xmech) })], [f]).driveVoltageRms[0]!,
  expected: fixtures.damage.volts,
  unit: 'V',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});

const pinkUnits = { share: '1', frequency: 'Hz' } as const;
for (const field of ['share', 'frequency'] as const) {
  check(`limit.programme.pink.${field}`, {
    formula: 'limit/pinkProgramme',
    source: scipy('power as 1/f in cells of a twenty-fourth of an octave, quad; where half of it lies below'),
    ...program,
    given: { cell: { value: fixtures.pink.cell, unit: '' } },
    got: ({ cell }) => {
      const pink = pinkProgramme({ from: '25 Hz', to: '200 Hz', crestFactor: si('ratio', 4) });
      return pink[field === 'share' ? 'share' : 'frequencies'][cell]!;
    },
    expected: fixtures.pink[field],
    unit: pinkUnits[field],
    tolerance: { relative: 1e-12, why: 'quadrature' },
  });
}
check('limit.programme.crest', {
  formula: 'limit/programme',
  source: scipy('rms voltage at which crest factor times rms travel is Xmax'),
  ...program,
  given: { crest: { value: crest, unit: '1' } },
  got: ({ crest: c }) => {
    const read = programme({ ...played, crestFactor: si('ratio', c) });
    return greatestProgrammeLevel(box, travelLimit(one), { programme: read }).driveVoltageRms;
  },
  expected: fixtures.greatestProgramme.travel[0]!,
  unit: 'V',
  tolerance: { relative: 1e-12, why: 'roots by two programs' },
});
