import { standardAir } from '@airspring/core/air';
import { resonance } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import ranges from './ranges.json' with { type: 'json' };
import relations from './relations.json' with { type: 'json' };

const air = { ...standardAir, speedOfSound: si('speed', 343.2) };
const check = checkIn(air);
const V = { value: [0.02, 0.04, 0.08], unit: 'm³' };
const L = { value: [0.12, 0.15, 0.2], unit: 'm' };
const a = { value: [0.025, 0.0375, 0.05], unit: 'm' };
const neck = (V: number, L: number, a: number) =>
  resonance(
    {
      volume: si('volume', V),
      area: si('area', Math.PI * a * a),
      length: si('length', L + (0.8216 + 0.6133) * a),
    },
    air,
  ).frequency;

check('duct.resonance.lumped', {
  formula: 'duct/resonance',
  source: { key: 'rayleigh1896', locator: 'secs. 303-307; one flanged and one free end' },
  status: 'derived',
  kind: 'identity',
  given: { V, L, a },
  got: ({ V, L, a }) => neck(V, L, a),
  expected: [43.34935176, 40.20982718, 32.83118641],
  unit: 'Hz',
  tolerance: { relative: 1e-9, why: 'the same closed formula, ten digits' },
});

check('duct.resonance.line', {
  formula: 'duct/resonance',
  source: {
    key: 'mpmath',
    locator: 'sec. 307; the neck as a line, tan(kl) = S/(kV) (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: { V, L, a },
  got: ({ V, L, a }) => neck(V, L, a),
  expected: relations['duct.resonance.line'],
  unit: 'Hz',
  tolerance: { relative: 0.005, why: 'the compliance of the air in the neck, (kl)²/6 of the frequency, is left out' },
});

// The table gives no neck: its effective length is chosen to meet the ninth row, so that row proves nothing.
check('duct.resonance.bottle', {
  formula: 'duct/resonance',
  source: { key: 'hyperphysics_bottle', locator: 'measured table' },
  status: 'seen',
  kind: 'measured',
  given: {
    V: { value: [100, 125, 150, 175, 200, 225, 250, 275, 300, 325, 350, 375, 400, 425, 450, 475, 500], unit: 'cm³' },
    S: { value: 3.1, unit: 'cm²' },
    length: { value: 0.0827, unit: 'm' },
  },
  got: ({ V, S, length }) =>
    resonance({ volume: si('volume', V * 1e-6), area: si('area', S * 1e-4), length: si('length', length) }, air)
      .frequency,
  printed: [
    '355',
    '310',
    '280',
    '256',
    '239',
    '225',
    '212',
    '202',
    '193',
    '185',
    '178',
    '171',
    '165',
    '161',
    '156',
    '152',
    '146',
  ],
  unit: 'Hz',
  tolerance: {
    relative: 0.07,
    why: 'blown by mouth; the neck is as long as the cavity at its smallest, hence not lumped',
  },
});

check('duct.resonance.ends', {
  formula: 'duct/resonance',
  source: { key: 'scipy', locator: 'sec. 307; k tan(kl) = S/V by a bracketed root (rayleigh1896); script ranges.py' },
  status: 'derived',
  kind: 'program',
  given: {
    V: { value: ranges.necks.map((neck) => neck.V), unit: 'm³' },
    S: { value: ranges.necks.map((neck) => neck.S), unit: 'm²' },
    l: { value: ranges.necks.map((neck) => neck.l), unit: 'm, effective' },
  },
  got: ({ V, S, l }) =>
    resonance({ volume: si('volume', V), area: si('area', S), length: si('length', l) }, air).frequency,
  expected: ranges.necks.map((neck) => neck.f),
  unit: 'Hz',
  tolerance: {
    relative: 0.042,
    why: 'the compliance of the air in the neck, (kl)²/6 of the frequency; kl = 0.5 for the last',
  },
});
