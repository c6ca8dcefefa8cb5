import { totalQ, ventedFamily, ventedRatios } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import { motions, physicalBox, physicalGiven, physicalVented, poles } from './driven-poles.js';
import { paperAir, physical } from './textbook.js';

const check = checkIn(paperAir);

for (const name of ['alpha', 'h', 'QT'] as const) {
  check(`enclosure.vented-ratios.${name}`, {
    formula: 'enclosure/ventedRatios',
    source: poles,
    status: 'derived',
    kind: 'program',
    given: physicalGiven,
    got: (given) => ventedRatios(physicalVented(physicalBox(given), given.fb), paperAir)[name],
    expected: motions.map((row) => row[name]),
    unit: '1',
    tolerance: { relative: 1e-14, why: 'poles in double precision' },
  });
}

check('enclosure.vented-ratios.printed', {
  formula: 'enclosure/ventedRatios',
  part: 'QT',
  source: { key: 'student2023', locator: 'question 1: Qts of the driver from Qes and Qms' },
  status: 'seen',
  kind: 'example',
  given: { Qes: { value: 0.796, unit: '1' }, Qms: { value: 3.35, unit: '1' } },
  got: ({ Qes, Qms }) => {
    const drivers = physical({ fs: 60.9, Qes, Qms, Vas: 7.74e-3, Sd: 0.0087, Re: 6 }, paperAir);
    return ventedRatios({ drivers, netVolume: si('volume', 28.15e-3), fb: si('frequency', 41.4) }, paperAir).QT;
  },
  printed: '0.64',
  unit: '1',
});

check('enclosure.total-q', {
  formula: 'enclosure/totalQ',
  source: poles,
  status: 'derived',
  kind: 'program',
  given: physicalGiven,
  got: (given) => {
    const spec = ventedFamily.read(physicalVented(physicalBox(given), given.fb));
    return totalQ(spec, 1 / Math.sqrt(given.Mms * given.Cms));
  },
  expected: motions.map(({ QT }) => QT),
  unit: '1',
  tolerance: { relative: 1e-14, why: 'poles in double precision' },
});
