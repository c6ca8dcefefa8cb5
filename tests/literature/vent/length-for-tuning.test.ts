import { standardAir } from '@airspring/core/air';
import { pistonInFlange, unflanged } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { compileLengthForTuning, lengthForTuning, type RoundVentSection, type Tuning } from '@airspring/core/vent';
import { checkIn } from '../../ledger/check.js';
import relations from '../duct/relations.json' with { type: 'json' };

const airOf = (c: number) => ({ ...standardAir, speedOfSound: si('speed', c) });
const check = checkIn(airOf(343.2));

function solved(vent: RoundVentSection, V: number, fb: number, c: number): Tuning {
  const result = lengthForTuning({ vent, netVolume: si('volume', V), fb: si('frequency', fb) }, airOf(c));
  if (!result.ok) throw new Error(result.because[0]?.text);
  return result;
}

const low = { V: { value: 0.4, unit: 'm³' }, fb: { value: 16, unit: 'Hz' }, d: { value: 0.1016, unit: 'm' } } as const;
const lowSource = { key: 'rayleigh1896', locator: 'secs. 303-307; the set-up is that of backman1995' };
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

const lineTolerance = {
  relative: 0.013,
  why: 'the compliance of the air in the vent is left out: (kl)²/3 of the effective length, up to 0.9 %, which counts the more the shorter the tube is against its ends',
};

/** Ends by the older rule: the outer one taken for a piston. */
const olderEnds = { outerEnd: pistonInFlange, innerEnd: unflanged };
const older = {
  source: {
    key: 'mpmath',
    locator:
      'sec. 307; the vent as a line, tan(kl) = S/(kV), ends of 8/3π and 0.6133 radii (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    V: { value: [0.02, 0.04, 0.08], unit: 'm³' },
    fb: { value: relations['vent.length.piston-end'], unit: 'Hz' },
    d: { value: [0.05, 0.075, 0.1], unit: 'm' },
  },
  expected: [0.12, 0.15, 0.2],
  unit: 'm',
  tolerance: lineTolerance,
} as const;

check('vent.length.middle', {
  ...older,
  formula: 'vent/lengthForTuning',
  got: ({ V, fb, d }) => solved({ diameter: si('length', d), ...olderEnds }, V, fb, 343.2).length,
});

check('vent.compile.middle', {
  ...older,
  formula: 'vent/compileLengthForTuning',
  got: ({ V, fb, d }) => compileLengthForTuning({ diameter: si('length', d), ...olderEnds }, airOf(343.2))(V, fb),
});

const high = {
  source: {
    key: 'mpmath',
    locator:
      'sec. 307; the vent as a line, tan(kl) = S/(kV), one flush and one free end (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    V: { value: [0.02, 0.04, 0.08], unit: 'm³' },
    fb: { value: relations['vent.tuning.line'], unit: 'Hz' },
    d: { value: [0.05, 0.075, 0.1], unit: 'm' },
  },
  expected: [0.12, 0.15, 0.2],
  unit: 'm',
  tolerance: lineTolerance,
} as const;

check('vent.length.high', {
  ...high,
  formula: 'vent/lengthForTuning',
  got: ({ V, fb, d }) => solved({ diameter: si('length', d) }, V, fb, 343.2).length,
});

check('vent.compile.high', {
  ...high,
  formula: 'vent/compileLengthForTuning',
  got: ({ V, fb, d }) => compileLengthForTuning({ diameter: si('length', d) }, airOf(343.2))(V, fb),
});
