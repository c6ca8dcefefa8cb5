import { si } from '@airspring/core/quantity';
import { airSpeedCustoms, airSpeedPeak, airSpeedRms } from '@airspring/core/vent';
import { check } from '../../ledger/check.js';
import relations from '../duct/relations.json' with { type: 'json' };

const source = {
  key: 'mpmath',
  locator: 'diff of V sin(2πft) over the area, for a volume V moved (morse1968); script relations.py',
};
const given = {
  f: { value: [30, 30, 40], unit: 'Hz' },
  V: { value: [0.0003, 0.0005, 0.0005], unit: 'm³' },
  d: { value: [0.075, 0.1, 0.1], unit: 'm' },
} as const;

check('vent.air-speed.peak', {
  formula: 'vent/airSpeedPeak',
  source,
  status: 'derived',
  kind: 'program',
  given,
  got: ({ f, V, d }) => airSpeedPeak({ diameter: si('length', d), flowPeak: si('volumeFlow', 2 * Math.PI * f * V) }),
  expected: relations['vent.air-speed.peak'],
  unit: 'm/s',
  tolerance: { relative: 5e-15, why: 'double precision' },
});

check('vent.air-speed.rms', {
  formula: 'vent/airSpeedRms',
  source: { ...source, locator: `${source.locator}; rms by quadrature over a period` },
  status: 'derived',
  kind: 'program',
  given,
  got: ({ f, V, d }) =>
    airSpeedRms({ diameter: si('length', d), flowRms: si('volumeFlow', Math.SQRT2 * Math.PI * f * V) }),
  expected: relations['vent.air-speed.rms'],
  unit: 'm/s',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('vent.air-speed.custom', {
  formula: 'vent/airSpeedCustoms',
  source: { key: 'common-practice', locator: 'at most 5 % of the speed of sound' },
  status: 'practice',
  kind: 'standard',
  given: { c: { value: 343.2, unit: 'm/s' } },
  got: () => airSpeedCustoms.usual.airSpeedPeak,
  expected: 17.16,
  unit: 'm/s',
  tolerance: { relative: 0.02, why: 'the custom is told both as 17 m/s and as 5 %' },
});
