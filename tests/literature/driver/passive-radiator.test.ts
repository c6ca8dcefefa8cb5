import { standardAir } from '@airspring/core/air';
import { passiveRadiator } from '@airspring/core/driver';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';

const sheetAir = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
check('driver.passive-radiator', {
  formula: 'driver/passiveRadiator',
  source: { key: 'small1974pr1', locator: 'definition of the passive-radiator parameters; invented radiator' },
  status: 'derived',
  kind: 'standard',
  given: {
    Sd: { value: 0.033, unit: 'm²' },
    fs: { value: 17, unit: 'Hz' },
    Vas: { value: 0.11, unit: 'm³' },
    Qms: { value: 6, unit: '1' },
  },
  got: ({ Sd, fs, Vas, Qms }) => {
    const read = passiveRadiator({
      Sd: si('coneArea', Sd),
      fs: si('frequency', fs),
      Vas: si('volume', Vas),
      Qms,
      sheetAir,
    });
    return [read.Mms, read.Cms, read.Rms];
  },
  // Vas/(ρc²Sd²), 1/(ωs²Cms), ωs Mms/Qms, worked out apart.
  expected: [0.12250310631481683, 0.0007154764101274484, 2.180844200096495],
  unit: 'kg, m/N, N·s/m',
  tolerance: { relative: 1e-14, why: 'closed form in double precision' },
});
