import { standardAir } from '@airspring/core/air';
import { si } from '@airspring/core/quantity';
import { tuning } from '@airspring/core/vent';
import { checkIn } from '../../ledger/check.js';
import ranges from '../duct/ranges.json' with { type: 'json' };
import relations from '../duct/relations.json' with { type: 'json' };

const air = { ...standardAir, speedOfSound: si('speed', 343.2) };
const check = checkIn(air);

function fb(V: number, L: number, a: number): number {
  const vent = { diameter: si('length', 2 * a), length: si('length', L) };
  const result = tuning({ vent, netVolume: si('volume', V) }, air);
  return result.ok ? result.fb : Number.NaN;
}

const given = {
  V: { value: [0.02, 0.04, 0.08], unit: 'm³' },
  L: { value: [0.12, 0.15, 0.2], unit: 'm' },
  a: { value: [0.025, 0.0375, 0.05], unit: 'm' },
} as const;

check('vent.tuning.lumped', {
  formula: 'vent/tuning',
  source: { key: 'rayleigh1896', locator: 'secs. 303-307; one flanged and one free end' },
  status: 'derived',
  kind: 'identity',
  given,
  got: ({ V, L, a }) => fb(V, L, a),
  expected: [43.34935176, 40.20982718, 32.83118641],
  unit: 'Hz',
  tolerance: {
    relative: 2e-4,
    why: 'the table keeps the ends of low frequency; ours shrink by some (ka)², up to 0.1 % of them',
  },
});

check('vent.tuning.line', {
  formula: 'vent/tuning',
  source: {
    key: 'mpmath',
    locator: 'sec. 307; the vent as a line, tan(kl) = S/(kV) (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given,
  got: ({ V, L, a }) => fb(V, L, a),
  expected: relations['vent.tuning.line'],
  unit: 'Hz',
  tolerance: { relative: 0.005, why: 'the compliance of the air in the vent is left out, (kl)²/6' },
});

check('vent.tuning.low', {
  formula: 'vent/tuning',
  source: { key: 'rayleigh1896', locator: 'secs. 303-307; the set-up is that of backman1995' },
  status: 'derived',
  kind: 'identity',
  given: { V: { value: 0.4, unit: 'm³' }, L: { value: 0.16332463, unit: 'm' }, a: { value: 0.0508, unit: 'm' } },
  got: ({ V, L, a }) => fb(V, L, a),
  expected: 16,
  unit: 'Hz',
  tolerance: { relative: 1e-4, why: 'the length was worked out with the ends of low frequency' },
});

/** Necks from slender to the end of the range, as round vents with one flush and one free end. */
const ofNeck = ({ S, l }: { S: number; l: number }) => {
  const a = Math.sqrt(S / Math.PI);
  return { a, L: l - (0.8216 + 0.6133) * a };
};
check('vent.tuning.ends', {
  formula: 'vent/tuning',
  source: { key: 'scipy', locator: 'sec. 307; k tan(kl) = S/V by a bracketed root (rayleigh1896); script ranges.py' },
  status: 'derived',
  kind: 'program',
  given: {
    V: { value: ranges.necks.map((neck) => neck.V), unit: 'm³' },
    L: { value: ranges.necks.map((neck) => ofNeck(neck).L), unit: 'm' },
    a: { value: ranges.necks.map((neck) => ofNeck(neck).a), unit: 'm' },
  },
  got: ({ V, L, a }) => fb(V, L, a),
  expected: ranges.necks.map((neck) => neck.f),
  unit: 'Hz',
  tolerance: { relative: 0.043, why: 'the compliance of the air in the vent, (kl)²/6, with kl = 0.5 for the last' },
});
