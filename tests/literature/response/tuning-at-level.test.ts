import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { type TuningAtLevel, tuningAtLevel } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import fixtures from './tuning-at-level.json' with { type: 'json' };

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
const told = (volts: number, K: number): TuningAtLevel => {
  const loss = quadraticLoss({ outward: si('ratio', K) });
  const answer = tuningAtLevel(box, { driveVoltageRms: si('voltageRms', volts), loss });
  if (!answer.ok) throw new Error(answer.because[0]!.text);
  return answer;
};

const given = {
  volts: { value: fixtures.volts, unit: 'V' },
  K: { value: fixtures.K, unit: '1' },
} as const;
const source = { key: 'scipy', locator: 'brentq and minimize_scalar in the circuit; script tuning-at-level.py' };
const { small } = fixtures;
const same = (value: number) => fixtures.volts.map(() => value);

for (const [id, of, expected, unit, relative] of [
  ['fb', ({ large }: TuningAtLevel) => large.fb, fixtures.fb, 'Hz', 1e-13],
  ['Q', ({ large }: TuningAtLevel) => large.Q!, fixtures.Q, '1', 1e-10],
  ['speed', ({ large }: TuningAtLevel) => large.airSpeedPeak, fixtures.speed, 'm/s', 1e-13],
  ['dip', ({ large }: TuningAtLevel) => large.leastImpedance!.frequency, fixtures.dip, 'Hz', 1e-7],
  ['load', ({ large }: TuningAtLevel) => large.leastImpedance!.value, fixtures.load, 'Ω', 1e-12],
  ['small.fb', (one: TuningAtLevel) => one.small.fb, same(small.fb), 'Hz', 1e-13],
  ['small.Q', (one: TuningAtLevel) => one.small.Q!, same(small.Q), '1', 1e-10],
  [
    'small.speed',
    (one: TuningAtLevel) => one.small.airSpeedPeak,
    fixtures.volts.map((volts) => volts * small.speed),
    'm/s',
    1e-13,
  ],
  ['small.dip', (one: TuningAtLevel) => one.small.leastImpedance!.frequency, same(small.dip), 'Hz', 1e-7],
  ['small.load', (one: TuningAtLevel) => one.small.leastImpedance!.value, same(small.load), 'Ω', 1e-12],
] as const)
  check(`response.tuning-at-level.${id}`, {
    formula: 'response/tuningAtLevel',
    source,
    status: 'derived',
    kind: 'program',
    given,
    got: ({ volts, K }) => of(told(volts, K)),
    expected,
    unit,
    tolerance: { relative, why: id.includes('Q') ? 'a slope by differences' : 'roots by two programs' },
  });
