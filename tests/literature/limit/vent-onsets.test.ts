import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { ventedBox } from '@airspring/core/enclosure';
import { quietLimits, ventOnsets } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import fixtures from '../response/at-level.json' with { type: 'json' };

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

/** An onset at the very speed that was found for a drive is reached at that drive. */
const drives = (f: number, speed: number, K: number) =>
  ventOnsets(box, { diameter: '75 mm' }, [f], {
    loss: quadraticLoss({ outward: si('ratio', K) }),
    onsets: [{ name: 'known', basis: 'a test', sources: [], at: () => ({ airSpeedPeak: speed }) }],
  });
const given = {
  f: { value: fixtures.f, unit: 'Hz' },
  speed: { value: fixtures.speed, unit: 'm/s' },
  K: { value: fixtures.K, unit: '1' },
} as const;
const source = { key: 'scipy', locator: 'one sine balanced in the circuit by fsolve; script at-level.py' };

const levels = fixtures.flow.map((flow, i) => 20 * Math.log10((1.2 * fixtures.f[i]! * flow) / 20e-6));
for (const side of ['quiet', 'noisy'] as const) {
  check(`limit.vent-onsets.${side}.drive`, {
    formula: 'limit/ventOnsets',
    source,
    status: 'derived',
    kind: 'program',
    given,
    got: ({ f, speed, K }) => drives(f, speed, K)[side].driveVoltageRms[0]!,
    expected: fixtures.volts,
    unit: 'V',
    tolerance: { relative: 1e-13, why: 'roots by two programs' },
  });
  check(`limit.vent-onsets.${side}.level`, {
    formula: 'limit/ventOnsets',
    source: { ...source, locator: `${source.locator}; level of the flow in half space` },
    status: 'derived',
    kind: 'program',
    given,
    got: ({ f, speed, K }) => drives(f, speed, K)[side].levelHalfSpace[0]!,
    expected: levels,
    unit: 'dB',
    tolerance: { absolute: 1e-12, why: 'roots by two programs' },
  });
}

check('limit.quiet-limits.jets', {
  formula: 'limit/quietLimits',
  source: {
    key: 'holman2005',
    locator: 'criterion 0.16 solved for the amplitude of a plug profile: stroke over diameter',
  },
  status: 'derived',
  kind: 'program',
  given: { d: { value: [0.05, 0.1], unit: 'm' } },
  got: ({ d }) => {
    const travel = quietLimits({ diameter: si('length', d) }).find(({ integrated }) => integrated)!;
    return (2 * Math.SQRT2 * travel.greatestRms) / d;
  },
  expected: [0.502654825, 0.502654825],
  unit: '1',
  tolerance: { relative: 1e-8, why: 'nine digits' },
});
