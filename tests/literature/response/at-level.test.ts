import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { type AtLevel, compileAtLevel, respondAtLevel, ventThirdHarmonic } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import fixtures from './at-level.json' with { type: 'json' };

const air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343.2) };
const check = checkIn(air);
const drivers = driver({
  Sd: '330 cm²',
  Mms: '85 g',
  Cms: '0.62 mm/N',
  Rms: '2.4 kg/s',
  Re: '5.6 Ω',
  Bl: '13.5 T·m',
});
const ventArea = si('area', Math.PI * 0.0375 ** 2);
const box = ventedBox({ drivers, netVolume: '45 L', fb: '27 Hz', QL: 10, ventArea }, air);

const given = {
  f: { value: fixtures.f, unit: 'Hz' },
  volts: { value: fixtures.volts, unit: 'V' },
  K: { value: fixtures.K, unit: '1' },
} as const;
const optionsOf = (volts: number, K: number) => ({
  driveVoltageRms: si('voltageRms', volts),
  loss: quadraticLoss({ outward: si('ratio', K) }),
});
const at = (f: number, volts: number, K: number): AtLevel => respondAtLevel(box, [f], optionsOf(volts, K));
const one = { key: 'scipy', locator: 'one sine balanced in the circuit by fsolve; script at-level.py' };
const time = { key: 'scipy', locator: 'equations of motion over time by LSODA, fundamental; script at-level.py' };
const exact = { relative: 1e-13, why: 'roots by two programs' };
const close = { absolute: 1e-12, why: 'roots by two programs' };

const kernelAt = (f: number, volts: number, K: number): AtLevel =>
  compileAtLevel(box, frequencyGrid([f])).at(optionsOf(volts, K).loss, volts);
const levels = fixtures.flow.map((flow, i) => 20 * Math.log10((1.2 * fixtures.f[i]! * flow) / 20e-6));
const loads = fixtures.current.map((current, i) => fixtures.volts[i]! / current);

/** Each column of both doors. */
for (const [column, unit, expected] of [
  ['airSpeedPeak', 'm/s', fixtures.speed],
  ['currentRms', 'A', fixtures.current],
  ['displacementPeak', 'm', fixtures.travel],
  ['ventResistance', 'Pa·s/m³', fixtures.resistance],
  ['impedance', 'Ω', loads],
  ['compression', 'dB', fixtures.compression],
  ['levelHalfSpace', 'dB', levels],
] as const) {
  const shared = {
    source: one,
    status: 'derived',
    kind: 'program',
    given,
    expected,
    unit,
    tolerance: unit === 'dB' ? close : exact,
  } as const;
  check(`response.at-level.${column}`, {
    ...shared,
    formula: 'response/respondAtLevel',
    got: ({ f, volts, K }) => at(f, volts, K)[column][0]!,
  });
  check(`response.at-level.kernel.${column}`, {
    ...shared,
    formula: 'response/compileAtLevel',
    got: ({ f, volts, K }) => kernelAt(f, volts, K)[column][0]!,
  });
}

const upTo3dB = fixtures.compression.flatMap((compression, i) => (compression < 3 ? [i] : []));
const some = <T>(list: readonly T[]): T[] => upTo3dB.map((i) => list[i]!);

check('response.at-level.over-time', {
  formula: 'response/respondAtLevel',
  source: time,
  status: 'derived',
  kind: 'program',
  given: {
    f: { value: some(fixtures.f), unit: 'Hz' },
    volts: { value: some(fixtures.volts), unit: 'V' },
    K: { value: some(fixtures.K), unit: '1' },
  },
  got: ({ f, volts, K }) => (20e-6 * 10 ** (at(f, volts, K).levelHalfSpace[0]! / 20)) / (1.2 * f),
  expected: some(fixtures.overTime.flow),
  unit: 'm³/s',
  tolerance: { relative: 0.01, why: 'one sine stands for a flow with harmonics: within 1 % up to 3 dB of compression' },
});

check('response.vent-third-harmonic', {
  formula: 'response/ventThirdHarmonic',
  source: { ...time, locator: 'equations of motion over time by LSODA, third harmonic; script at-level.py' },
  status: 'derived',
  kind: 'program',
  given: {
    f: { value: some(fixtures.f), unit: 'Hz' },
    volts: { value: some(fixtures.volts), unit: 'V' },
    K: { value: some(fixtures.K), unit: '1' },
  },
  got: ({ f, volts, K }) => ventThirdHarmonic(box, [f], optionsOf(volts, K))[0]!,
  expected: upTo3dB.map((i) => (3 * fixtures.overTime.third[i]!) / fixtures.overTime.flow[i]!),
  unit: '1',
  tolerance: {
    relative: 0.035,
    why: 'the loss also damps the harmonic, which is left out: 0.3 dB at 2 dB of compression',
  },
});
