import {
  compileFreeAirImpedance,
  completeDriver,
  driver,
  driverParameters,
  freeAirImpedance,
  group,
  lr2Inductor,
} from '@airspring/core/driver';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { tenInchData } from '../../arbitrary/driver.js';
import { check } from '../../ledger/check.js';
import circuit from './group-circuit.json';

const { Re, Le, R2, L2, Bl, Mms, Cms, Rms } = circuit.driver;
const drawn = driver({
  Sd: '330 cm²',
  Re: si('resistance', Re),
  coil: lr2Inductor({ Le: si('inductance', Le), R2: si('resistance', R2), L2: si('inductance', L2) }),
  Bl: si('forceFactor', Bl),
  Mms: si('mass', Mms),
  Cms: si('compliance', Cms),
  Rms: si('mechanicalResistance', Rms),
});

const byKernel = (f: number) => {
  const out = { re: new Float64Array(1), im: new Float64Array(1) };
  compileFreeAirImpedance(drawn)(frequencyGrid([f]), out);
  return out;
};

for (const { title, wiring, re, im } of circuit.cases) {
  const simulated = { re, im };
  for (const part of ['re', 'im'] as const) {
    const shared = {
      source: { key: 'ngspice', locator: 'mobility circuit of a moving-coil driver (beranek2012)' },
      status: 'derived',
      kind: 'program',
      given: { wiring: { value: JSON.stringify(wiring), unit: '1' }, f: { value: circuit.frequencies, unit: 'Hz' } },
      expected: simulated[part],
      unit: 'ohm',
      tolerance: {
        relative: 1e-7,
        why: 'the simulated compliance has 1e-10 in series: 6e-9 of the real part at resonance, ten times that of the smaller imaginary part',
      },
    } as const;
    check(`driver.group.circuit.${title.replaceAll(/\W+/g, '-')}.${part}`, {
      ...shared,
      formula: title === 'one' ? 'driver/freeAirImpedance' : 'driver/group',
      got: ({ f }) => freeAirImpedance(group(drawn, wiring).equivalent, [f])[part][0]!,
    });
    if (title !== 'one') continue;
    check(`driver.impedance.circuit.${part}`, {
      ...shared,
      formula: 'driver/compileFreeAirImpedance',
      got: ({ f }) => byKernel(f)[part][0]!,
    });
  }
}

const one = completeDriver(tenInchData);
if (!one.ok) throw new Error('not enough');

check('driver.group.parallel-level', {
  formula: 'driver/group',
  source: {
    key: 'common-practice',
    locator: 'two equal drivers in parallel on one amplifier setting play 6 dB louder',
  },
  status: 'practice',
  kind: 'example',
  given: { parallel: { value: 2, unit: '1' } },
  got: ({ parallel }) =>
    driverParameters(group(one.driver, { parallel }).equivalent).levelHalfSpace2V83 -
    driverParameters(one.driver).levelHalfSpace2V83,
  expected: 6,
  unit: 'dB',
  tolerance: { absolute: 0.05, why: 'the rule says 6, for 6.02' },
});

check('driver.group.isobaric-volume', {
  formula: 'driver/group',
  source: { key: 'common-practice', locator: 'an isobaric pair needs half the volume of one driver' },
  status: 'practice',
  kind: 'example',
  given: { parallel: { value: 2, unit: '1' } },
  got: ({ parallel }) =>
    driverParameters(group(one.driver, { parallel, isobaric: true }).equivalent).Vas / driverParameters(one.driver).Vas,
  expected: 0.5,
  unit: '1',
  tolerance: { relative: 1e-15, why: 'exact without the air in the chamber' },
});

check('driver.group.shares', {
  formula: 'driver/group',
  source: {
    key: 'beranek2012',
    locator: 'elements of one velocity; equal branches divide current and voltage equally',
  },
  status: 'derived',
  kind: 'example',
  given: { wiring: { value: 'two in series in each of three branches, as isobaric pairs', unit: '' } },
  got: () => {
    const six = group(drawn, { series: 2, parallel: 3, isobaric: true });
    return [six.count, six.fronts, six.equivalent.Sd, six.share.voltage, six.share.current];
  },
  expected: [6, 3, 0.099, 1 / 2, 1 / 3],
  unit: '1, m²',
  tolerance: { relative: 1e-15, why: 'products and quotients of whole numbers' },
});
