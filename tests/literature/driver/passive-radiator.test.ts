import { standardAir } from '@airspring/core/air';
import { passiveRadiator } from '@airspring/core/driver';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';

const sheetAir = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const check = checkIn(sheetAir);
check('driver.passive-radiator', {
  formula: 'driver/passiveRadiator',
  source: { key: 'small1974pr1', locator: 'definition of the passive-radiator parameters; invented radiator' },
  status: 'derived',
  kind: 'standard',
  given: {
    coneDiameter: { value: 0.205, unit: 'm' },
    fs: { value: 17, unit: 'Hz' },
    Vas: { value: 0.11, unit: 'm³' },
    Qms: { value: 6, unit: '1' },
  },
  got: ({ coneDiameter, fs, Vas, Qms }) => {
    const read = passiveRadiator({
      coneDiameter: si('length', coneDiameter),
      fs: si('frequency', fs),
      Vas: si('volume', Vas),
      Qms,
      sheetAir,
    });
    return [read.Sd, read.Mms, read.Cms, read.Rms];
  },
  // πd²/4, Vas/(ρc²Sd²), 1/(ωs²Cms), ωs Mms/Qms, worked out apart.
  expected: [0.03300635781677776, 0.12255031403190363, 0.000715200800813687, 2.18168460879392],
  unit: 'm², kg, m/N, N·s/m',
  tolerance: { relative: 1e-14, why: 'closed form in double precision' },
});
