import { ventedBox, ventedImpedance, ventedImpedanceQuality } from '@airspring/core/enclosure';
import { features } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import { paperAir, physical } from './textbook.js';
import motions from './vented-impedance.json' with { type: 'json' };

// Set by set: the lower peak, the dip, the upper peak, and what the definitions give, worked out with mpmath to ten digits.
const sets = [
  { L: 24.39068839, M: 40, H: 65.59880452, fs: 40, h: 1, alpha: 1.061318021, blocked: 57.42916362 },
  { L: 20.13583685, M: 39.6, H: 64.89921474, fs: 33, h: 1.2, alpha: 1.8, blocked: 55.21956175 },
  { L: 18, M: 27, H: 45, fs: 30, h: 0.9, alpha: 0.8, blocked: 40.24922359 },
  { L: 22.84251259, M: 50, H: 109.445053, fs: 50, h: 1, alpha: 3, blocked: 100 },
];
const column = (name: keyof (typeof sets)[number]) => sets.map((set) => set[name]);
const source = { key: 'small1973vented4', locator: 'fsB = fL fH/fB; alpha; fB² = fL² + fH² − fC²' };

for (const [name, field, unit] of [
  ['fs', 'fs', 'Hz'],
  ['h', 'h', '1'],
  ['alpha', 'alpha', '1'],
  ['ventBlocked', 'blocked', 'Hz'],
] as const) {
  check(`enclosure.vented-impedance.${name}`, {
    formula: 'enclosure/ventedImpedance',
    source,
    status: 'derived',
    kind: 'table',
    given: {
      L: { value: column('L'), unit: 'Hz' },
      M: { value: column('M'), unit: 'Hz' },
      H: { value: column('H'), unit: 'Hz' },
    },
    got: ({ L, M, H }) => ventedImpedance({ lowerPeak: L, dip: M, upperPeak: H } as never)[name],
    expected: column(field),
    unit,
    tolerance: { relative: 1e-8, why: 'peaks to ten digits' },
  });
}

check('enclosure.vented-impedance.fb', {
  formula: 'enclosure/ventedImpedance',
  source: { ...source, locator: 'h = fB/fS: the tuning of each set from its h and fs, which is its dip, handed back' },
  status: 'derived',
  kind: 'identity',
  given: {
    L: { value: column('L'), unit: 'Hz' },
    M: { value: column('M'), unit: 'Hz' },
    H: { value: column('H'), unit: 'Hz' },
  },
  got: ({ L, M, H }) => ventedImpedance({ lowerPeak: L, dip: M, upperPeak: H } as never).fb,
  expected: sets.map(({ fs, h }) => fs * h),
  unit: 'Hz',
  tolerance: { relative: 1e-14, why: 'products of two numbers' },
});

test('the impedance of a box with few losses gives its drivers back', () => {
  const driver = physical({ fs: 35, Qms: 60, Qes: 0.4, Vas: 0.05, Sd: 0.035, Re: 6 }, paperAir);
  const system = ventedBox({ drivers: driver, netVolume: '40 L', fb: '30 Hz', QL: 1000 });
  const { impedanceMaxima, impedanceMinima } = features(system, { from: '5 Hz', to: '200 Hz' });
  const [lower, upper] = impedanceMaxima;
  const dip = impedanceMinima.find(({ frequency }) => frequency > lower!.frequency && frequency < upper!.frequency);
  const found = ventedImpedance({
    lowerPeak: lower!.frequency,
    dip: dip!.frequency,
    upperPeak: upper!.frequency,
    netVolume: '40 L',
    coneArea: driver.Sd,
  });
  expect(found.fs / 35).toBeCloseTo(1, 2);
  expect(found.Mms! / driver.Mms).toBeCloseTo(1, 1);
  expect(found.Cms! / driver.Cms).toBeCloseTo(1, 1);
});

test('a dip outside the peaks is refused', () => {
  expect(() => ventedImpedance({ lowerPeak: '20 Hz', dip: '80 Hz', upperPeak: '60 Hz' })).toThrow(/between the peaks/);
});

// Boxes worked out from the motion of their cones: script vented-impedance.py.
for (const name of ['Qes', 'Qms', 'Qts'] as const) {
  const value = (field: keyof (typeof motions)[number]) => motions.map((one) => one[field]);
  check(`enclosure.vented-impedance-quality.${name}`, {
    formula: 'enclosure/ventedImpedanceQuality',
    source: { key: 'scipy', locator: 'peaks of the impedance by minimize_scalar, script vented-impedance.py' },
    status: 'derived',
    kind: 'program',
    given: {
      lowerPeak: { value: value('lowerPeak'), unit: 'Hz' },
      dip: { value: value('dip'), unit: 'Hz' },
      upperPeak: { value: value('upperPeak'), unit: 'Hz' },
      peakImpedance: { value: value('peakImpedance'), unit: 'Ω' },
      flankFrequency: { value: value('flankFrequency'), unit: 'Hz' },
      flankImpedance: { value: value('flankImpedance'), unit: 'Ω' },
      Re: { value: value('Re'), unit: 'Ω' },
    },
    got: (given) => ventedImpedanceQuality(given as never)[name],
    expected: value(name),
    unit: '1',
    tolerance: { relative: 1e-7, why: 'peaks found to some 1e-8 of their frequency' },
  });
}

test.each([
  ['peakImpedance', { peakImpedance: '5 Ω' }, /more than Re, 6 Ω/],
  ['flankImpedance', { flankImpedance: '70 Ω' }, /between Re, 6 Ω, and the peak, 60 Ω/],
  ['flankFrequency', { flankFrequency: '27 Hz' }, /beside a peak, not the dip/],
] as const)('a reading that cannot be is refused: %s', (_, wrong, says) => {
  const right = {
    lowerPeak: '18 Hz',
    dip: '27 Hz',
    upperPeak: '45 Hz',
    peakImpedance: '60 Ω',
    flankFrequency: '52 Hz',
    flankImpedance: '25 Ω',
    Re: '6 Ω',
  } as const;
  expect(() => ventedImpedanceQuality({ ...right, ...wrong })).toThrow(says);
});
