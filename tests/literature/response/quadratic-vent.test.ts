import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { respondAtLevel } from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import fixtures from './quadratic-vent.json' with { type: 'json' };

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
const box = ventedBox({ drivers, netVolume: '1000 L', fb: '400 Hz', ventArea }, air);
const speed = (K: number): number =>
  respondAtLevel(box, [fixtures.f], {
    driveVoltageRms: si('voltageRms', fixtures.volts),
    loss: quadraticLoss({ outward: si('ratio', K) }),
  }).airSpeedPeak[0]!;
const source = { key: 'scipy', locator: 'equations of motion over time by LSODA; script quadratic-vent.py' } as const;
const shared = { formula: 'response/respondAtLevel', source, status: 'derived', kind: 'program', unit: 'm/s' } as const;

/** From 1.7 to 54 dB of compression. */
check('response.at-level.quadratic-vent', {
  ...shared,
  given: { K: { value: fixtures.K, unit: '1' } },
  got: ({ K }) => speed(K),
  expected: fixtures.speed,
  tolerance: { relative: 1 - fixtures.ratio + 1e-4, why: 'one sine stands for a flow that follows the root of one' },
});

const [most, mostK] = [fixtures.speed.slice(-2), fixtures.K.slice(-2)];
check('response.at-level.quadratic-limit', {
  ...shared,
  source: { ...source, locator: `${source.locator}; the ratio is √(3π/8) over the fundamental of √sin` },
  given: { K: { value: mostK, unit: '1' } },
  got: ({ K }) => speed(K),
  expected: most.map((one) => one * fixtures.ratio),
  tolerance: { relative: 2e-5, why: 'the limit, at which the speed is 2.465 % too low' },
});
