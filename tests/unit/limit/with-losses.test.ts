import { driver, group } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { closedBox, mixedBox, ventedBox } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  amplifierHeat,
  coilTemperatureLimit,
  currentLimit,
  damageLimit,
  greatestCoilRise,
  greatestLevelWithLosses,
  greatestProgrammeLevel,
  limitsOfEach,
  motorTravelLimit,
  pinkProgramme,
  programme,
  programmeHeat,
  quietLimits,
  respondWithHeat,
  suspensionTravelLimit,
  temperatureAfter,
  thermalModel,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { respondAtLevel } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';

/** Invented. */
const ten = driver({
  Sd: '330 cm²',
  Mms: '86 g',
  Cms: '0.4 mm/N',
  Rms: '3.6 N·s/m',
  Re: '5.6 ohm',
  Bl: '14.3 T·m',
  Xmax: '9 mm',
});
const closed = closedBox({ drivers: ten, netVolume: '40 L' });
const vented = ventedBox({ drivers: ten, netVolume: '60 L', fb: '28 Hz', QL: 7, ventArea: '60 cm²' });
const stages = { coilToMagnet: '3.5 K/W', magnetToAir: '1.5 K/W', coilTime: '6 s', magnetTime: '20000 s' } as const;
const heat = thermalModel({ ...stages, magnetTime: '1200 s' });
const loss = quadraticLoss({ outward: si('ratio', 1.5) });
const pink = pinkProgramme({ from: '25 Hz', to: '200 Hz', crestFactor: si('ratio', 4) });
const codes = (work: () => unknown) => faultsOf(work).map(({ code, path }) => `${code} ${path}`);

test('a model is of copper unless it says otherwise, survives JSON, and is accepted again', () => {
  expect(heat.coefficient).toBe(0.00393);
  expect(thermalModel({ ...stages, coefficient: '0.39 %/K' }).coefficient).toBeCloseTo(0.0039, 15);
  expect(thermalModel(JSON.parse(JSON.stringify(heat)))).toEqual(heat);
});

test('a coil is warm within seconds, a magnet within the hour', () => {
  const after = (time: `${number} s`) => temperatureAfter(heat, { power: '40 W', time });
  expect(after('0 s')).toEqual({ coil: 0, magnet: 0, warnings: [] });
  // A minute is long for the coil and short for the magnet.
  expect(after('60 s').coil).toBeGreaterThan(0.95 * 3.5 * 40);
  expect(after('60 s').magnet).toBeLessThan(0.05 * 1.5 * 40);
  expect(after('100000 s').magnet).toBeCloseTo(60, 9);
});

test('a coil hotter than any that is known to survive is told with a warning, in each answer about heat', () => {
  const at = (driveVoltageRms: '10 V' | '400 V') => [
    respondWithHeat(closed, [30, 100], { driveVoltageRms, heat }),
    programmeHeat(closed, { programme: pink, driveVoltageRms, heat }),
  ];
  for (const { warnings } of at('10 V')) expect(warnings).toEqual([]);
  for (const { warnings, coilRise } of at('400 V')) {
    const most = typeof coilRise === 'number' ? coilRise : Math.max(...coilRise);
    expect(most).toBeGreaterThan(greatestCoilRise);
    expect(warnings).toMatchObject([{ code: 'outside-validity', path: 'coilRise', got: most }]);
  }
  const after = (power: '40 W' | '200 W') => temperatureAfter(heat, { power, time: '3600 s' });
  expect(after('40 W').warnings).toEqual([]);
  expect(after('200 W').warnings[0]!.expected).toContain('at most 250 K');
});

test('each coil of a group has its share of the power', () => {
  const four = closedBox({ drivers: group(ten, { series: 2, parallel: 2 }), netVolume: '160 L' });
  // Two in series take twice the voltage.
  const one = respondWithHeat(closed, [30, 100], { driveVoltageRms: '20 V', heat });
  const each = respondWithHeat(four, [30, 100], { driveVoltageRms: '40 V', heat });
  each.coilRise.forEach((rise, i) => expect(rise / one.coilRise[i]!).toBeCloseTo(1, 9));
  each.power.forEach((power, i) => expect(power / one.power[i]!).toBeCloseTo(1, 9));
});

test('with a loss and no heat the greatest level is that of the response at its drive', () => {
  const found = greatestLevelWithLosses(vented, [airSpeedLimit('8 m/s'), voltageLimit('60 V')], [24, 28, 40], { loss });
  found.driveVoltageRms.forEach((drive, i) => {
    const at = respondAtLevel(vented, [found.frequencies[i]!], { driveVoltageRms: si('voltageRms', drive), loss });
    expect(at.levelHalfSpace[0]! - found.levelHalfSpace[i]!).toBeCloseTo(0, 9);
    if (found.binding[i] === 'vent') expect(at.airSpeedPeak[0]!).toBeCloseTo(8 * Math.SQRT2, 8);
  });
  expect(found.binding).toContain('vent');
  expect([...found.coilRise]).toEqual([0, 0, 0]);
});

test('what gives out first changes over frequency, and with the amplifier', () => {
  const limits = [...travelLimit(ten), coilTemperatureLimit(ten, { heat, rise: '120 K' })];
  const options = { loss, heat, ventCompression: '1 dB', amplifier: { supply: '60 V', heat: '60 W' } } as const;
  const { binding, least } = greatestLevelWithLosses(vented, limits, [12, 28, 45, 150], options);
  expect(binding).toEqual(['travel', 'vent compression', 'travel', 'amplifier heat']);
  expect(least).toMatchObject({ frequency: 12, binding: 'travel' });
  const cool = greatestLevelWithLosses(vented, limits, [150], {
    ...options,
    amplifier: { supply: '60 V', heat: '400 W' },
  });
  expect(cool.binding).toEqual(['coil temperature']);
  expect(cool.coilRise[0]!).toBeCloseTo(120, 6);
});

test('a reactive load heats the amplifier more than a resistance of its magnitude', () => {
  const at = { supply: '40 V', driveVoltageRms: '20 V' } as const;
  const { heat: warm, delivered } = amplifierHeat(closed, [55, 1000], at);
  for (const power of [...warm, ...delivered]) expect(power).toBeGreaterThan(0);
  const { currentRms } = respondWithHeat(closed, [55], { driveVoltageRms: '20 V', heat: { ...heat, ...faint } });
  const resistive = ((2 * Math.SQRT2) / Math.PI) * 40 * currentRms[0]! - 20 * currentRms[0]!;
  expect(warm[0]!).toBeGreaterThan(resistive);
});
/** Thermal resistances so small that nothing warms up. */
const faint = { coilToMagnet: si('thermalResistance', 1e-6), magnetToAir: si('thermalResistance', 1e-6) };

test('unlike drivers take a programme, as long as nothing is to warm up', () => {
  const box = mixedBox({
    drivers: {
      parallel: [
        { name: 'left', driver: ten },
        { name: 'right', driver: { ...ten, Bl: si('forceFactor', 12) } },
      ],
    },
    chambers: { box: { netVolume: '80 L' } },
  });
  const limits = limitsOfEach(box.spec);
  expect(greatestProgrammeLevel(box, limits, { programme: pink }).binding).toMatch(/^travel of /);
  expect(codes(() => greatestProgrammeLevel(box, limits, { programme: pink, heat }))).toEqual(['inconsistent system']);
});

test('a programme of high peaks is limited by travel, one of low peaks by heat', () => {
  const limits = [...travelLimit(ten), coilTemperatureLimit(ten, { heat, rise: '60 K' })];
  const at = (crest: number) =>
    greatestProgrammeLevel(closed, limits, { programme: { ...pink, crestFactor: si('ratio', crest) }, heat });
  expect([at(8).binding, at(1.5).binding]).toEqual(['travel', 'coil temperature']);
  expect(at(1.5).coilRise).toBeCloseTo(60, 6);
  expect(Object.keys(at(8).drives)).toEqual(['travel', 'coil temperature']);
});

test.each([{}, { heat }])('a programme: the drive of a limit that is told twice is the lesser one', (warmth) => {
  const limits = [...quietLimits({ diameter: '75 mm' }), ...travelLimit(ten)];
  const { drives, binding, driveVoltageRms } = greatestProgrammeLevel(vented, limits, { programme: pink, ...warmth });
  expect(binding).toBe('quiet vent');
  expect(drives['quiet vent']! / driveVoltageRms).toBeCloseTo(1, 6);
});

describe('curves over the travel', () => {
  test('fall first on the nearer side, and not at all beyond what was measured', () => {
    const coefficients = [10, 100, -5e4];
    const [limit] = motorTravelLimit({ coefficients, upTo: '12 mm' });
    // 1.8 = 100 x + 5e4 x², on the inward side
    expect(limit!.greatestRms * Math.SQRT2).toBeCloseTo((-100 + Math.sqrt(1e4 + 4 * 5e4 * 1.8)) / 1e5, 12);
    expect(motorTravelLimit({ coefficients, upTo: '4 mm' })).toEqual([]);
    expect(motorTravelLimit({ coefficients: [10], upTo: '4 mm' })).toEqual([]);
    const wider = motorTravelLimit({ coefficients, upTo: '12 mm' }, { share: '70 %' });
    expect(wider[0]!.greatestRms).toBeGreaterThan(limit!.greatestRms);
  });
  test('a stiffer suspension moves less', () => {
    const [soft, hard] = [4e6, 8e6].map((rise) =>
      suspensionTravelLimit({ coefficients: [1600, 0, rise], upTo: '20 mm' }),
    );
    expect(soft![0]!.greatestRms / hard![0]!.greatestRms).toBeCloseTo(Math.SQRT2, 12);
    expect(soft![0]!.name).toBe('travel by stiffness');
  });
  test('a margin keeps away from damage', () => {
    expect(damageLimit({ Xmech: '20 mm', margin: '25 %' }).greatestRms * Math.SQRT2).toBeCloseTo(0.015, 15);
  });
});

describe('refusals', () => {
  test('models and drives', () => {
    expect(codes(() => thermalModel({ ...stages, coilTime: '6 K' as never, magnetToAir: '0 K/W' }))).toEqual([
      'not-positive heat.magnetToAir',
      'unit heat.coilTime',
    ]);
    const at = { driveVoltageRms: '20 V', heat: { ...stages, coilToMagnet: '3 W' as never } } as const;
    expect(codes(() => respondWithHeat(closed, [30], at))).toEqual(['unit options.heat.coilToMagnet']);
    expect(codes(() => temperatureAfter(stages, { power: '-1 W', time: '3 s' }))).toEqual([
      'not-positive heating.power',
    ]);
  });
  test('curves', () => {
    const of = (coefficients: unknown) =>
      codes(() => motorTravelLimit({ coefficients: coefficients as never, upTo: '9 mm' }));
    expect(of([])).toEqual(['empty curve.coefficients']);
    expect(of([1, Number.NaN])).toEqual(['not-finite curve.coefficients']);
    expect(of([-1, 0, 3])).toEqual(['not-positive curve.coefficients']);
    expect(of(Array(17).fill(1))).toEqual(['out-of-range curve.coefficients']);
    const curve = { coefficients: [9, 0, -1e4], upTo: '9 mm' } as const;
    expect(codes(() => motorTravelLimit(curve, { share: si('ratio', 1.1) }))).toEqual(['out-of-range options.share']);
    expect(codes(() => damageLimit({ Xmech: '9 mm', margin: '100 %' }))).toEqual(['out-of-range options.margin']);
  });
  test('programmes', () => {
    const of = (frequencies: number[], share: number[], crest = 4) =>
      codes(() => programme({ frequencies, share, crestFactor: si('ratio', crest) }));
    expect(of([30, 60], [0.5, 0.4])).toEqual(['inconsistent programme.share']);
    expect(of([30, 60], [1])).toEqual(['inconsistent programme.share']);
    expect(() => programme({ frequencies: [30], share: [], crestFactor: si('ratio', 4) })).toThrow(
      'programme.share: got a list of 0; expected a list of 1, a share for each frequency. Give as many.',
    );
    expect(of([30, 60], [1.5, -0.5])).toEqual(['not-positive programme.share[1]']);
    expect(of([30, 60], [1, Number.NaN])).toEqual(['not-finite programme.share[1]']);
    expect(of([60, 30], [0.5, 0.5])).toEqual(['unsorted programme.frequencies[1]']);
    expect(of([30], [1], 0.9)).toEqual(['out-of-range programme.crestFactor']);
    expect(codes(() => programmeHeat(closed, { programme: pink, driveVoltageRms: '0 V', heat }))).toEqual([
      'not-positive options.driveVoltageRms',
    ]);
  });
  test('a compression without a loss, an amplifier that clips, limits that no drive passes', () => {
    const limits = travelLimit(ten);
    expect(codes(() => greatestLevelWithLosses(vented, limits, [30], { ventCompression: '1 dB' }))).toEqual([
      'conflict options.ventCompression',
    ]);
    expect(codes(() => amplifierHeat(closed, [30], { supply: '40 V', driveVoltageRms: '29 V' }))).toEqual([
      'inconsistent options.driveVoltageRms',
    ]);
    // A hot coil never takes this much, whatever the voltage.
    expect(codes(() => greatestProgrammeLevel(closed, [currentLimit('900 A')], { programme: pink, heat }))).toEqual([
      'inconsistent limits',
    ]);
    expect(codes(() => greatestLevelWithLosses(vented, [], [30], { loss }))).toEqual(['empty limits']);
    expect(codes(() => greatestLevelWithLosses(closed, [airSpeedLimit('9 m/s')], [30], { heat }))).toEqual([
      'empty network.probes.ventAirSpeed',
    ]);
  });
});
