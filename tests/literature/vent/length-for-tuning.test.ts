import { standardAir } from '@airspring/core/air';
import { pistonInFlange, unflanged } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { compileLengthForTuning, lengthForTuning, type RoundVentSection, type Tuning } from '@airspring/core/vent';
import { check } from '../../ledger/check.js';

const airOf = (c: number) => ({ ...standardAir, speedOfSound: si('speed', c) });

function solved(vent: RoundVentSection, V: number, fb: number, c: number): Tuning {
  const result = lengthForTuning({ vent, netVolume: si('volume', V), fb: si('frequency', fb) }, airOf(c));
  if (!result.ok) throw new Error(result.because[0]?.text);
  return result;
}

const low = { V: { value: 0.4, unit: 'm³' }, fb: { value: 16, unit: 'Hz' }, d: { value: 0.1016, unit: 'm' } } as const;
const lowSource = { key: 'rayleigh1896', locator: 'secs. 303-307; the set-up is that of a vent study of 1995' };
const lowTolerance = { relative: 2e-4, why: 'the value keeps the ends of low frequency' };

check('vent.length.low', {
  formula: 'vent/lengthForTuning',
  source: lowSource,
  status: 'derived',
  kind: 'identity',
  given: low,
  got: ({ V, fb, d }) => solved({ diameter: si('length', d) }, V, fb, 343.2).length,
  expected: 0.16332463,
  unit: 'm',
  tolerance: lowTolerance,
});

check('vent.compile.low', {
  formula: 'vent/compileLengthForTuning',
  source: lowSource,
  status: 'derived',
  kind: 'identity',
  given: low,
  got: ({ V, fb, d }) => compileLengthForTuning({ diameter: si('length', d) }, airOf(343.2))(V, fb),
  expected: 0.16332463,
  unit: 'm',
  tolerance: lowTolerance,
});

const example = {
  V: { value: 0.0566, unit: 'm³' },
  fb: { value: 35, unit: 'Hz' },
  d: { value: 0.1016, unit: 'm' },
} as const;

check('vent.length.effective', {
  formula: 'vent/lengthForTuning',
  source: {
    key: 'ventexample',
    locator: 'effective length of the worked example; its last step, a shorter tube, corrects the ends twice',
  },
  status: 'seen',
  kind: 'example',
  given: example,
  got: ({ V, fb, d }) => solved({ diameter: si('length', d) }, V, fb, 343).effectiveLength,
  expected: 0.348,
  unit: 'm',
  tolerance: { relative: 0.0015, why: 'printed to three digits: half of the last one' },
});

/** Ends by the older rule: the outer one taken for a piston. */
const olderEnds = { outerEnd: pistonInFlange, innerEnd: unflanged };
const olderTolerance = { relative: 5e-4, why: 'the rule rounds the sum of both ends, 1.4621 radii, to 1.463 or 1.464' };

check('vent.compile.middle', {
  formula: 'vent/compileLengthForTuning',
  source: {
    key: 'ventexample',
    locator: 'the same example with the customary 1.463 radii for both ends, worked out anew',
  },
  status: 'derived',
  kind: 'example',
  given: example,
  got: ({ V, fb, d }) => compileLengthForTuning({ diameter: si('length', d), ...olderEnds }, airOf(343))(V, fb),
  expected: 0.2741398796,
  unit: 'm',
  tolerance: olderTolerance,
});

check('vent.length.middle', {
  formula: 'vent/lengthForTuning',
  source: { key: 'forumvent', locator: 'L = 23562.5 d² n/(fb² Vb) - 0.732 d, in cm and litres' },
  status: 'seen',
  kind: 'example',
  given: { V: { value: 0.0566, unit: 'm³' }, fb: { value: 35, unit: 'Hz' }, d: { value: 0.1, unit: 'm' } },
  got: ({ V, fb, d }) => solved({ diameter: si('length', d), ...olderEnds }, V, fb, 344.1482864).length,
  expected: 0.2666355809,
  unit: 'm',
  tolerance: olderTolerance,
});

check('vent.length.high', {
  formula: 'vent/lengthForTuning',
  source: { key: 'rayleigh1896', locator: 'secs. 303-307; one flanged and one free end, solved for the length' },
  status: 'derived',
  kind: 'identity',
  given: {
    V: { value: [0.02, 0.04, 0.08], unit: 'm³' },
    fb: { value: [43.34935176, 40.20982718, 32.83118641], unit: 'Hz' },
    d: { value: [0.05, 0.075, 0.1], unit: 'm' },
  },
  got: ({ V, fb, d }) => solved({ diameter: si('length', d) }, V, fb, 343.2).length,
  expected: [0.12, 0.15, 0.2],
  unit: 'm',
  tolerance: {
    relative: 4e-4,
    why: 'the table keeps the ends of low frequency; ours shrink by some (ka)², up to 0.1 % of them',
  },
});

check('vent.compile.high', {
  formula: 'vent/compileLengthForTuning',
  source: { key: 'rayleigh1896', locator: 'secs. 303-307; one flanged and one free end, solved for the length' },
  status: 'derived',
  kind: 'identity',
  given: {
    V: { value: [0.02, 0.04, 0.08], unit: 'm³' },
    fb: { value: [43.34935176, 40.20982718, 32.83118641], unit: 'Hz' },
    d: { value: [0.05, 0.075, 0.1], unit: 'm' },
  },
  got: ({ V, fb, d }) => compileLengthForTuning({ diameter: si('length', d) }, airOf(343.2))(V, fb),
  expected: [0.12, 0.15, 0.2],
  unit: 'm',
  tolerance: {
    relative: 4e-4,
    why: 'the table keeps the ends of low frequency; ours shrink by some (ka)², up to 0.1 % of them',
  },
});
