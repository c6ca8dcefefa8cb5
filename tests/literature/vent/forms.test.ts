import { standardAir } from '@airspring/core/air';
import { flared, pistonInFlange, rectangularPiston } from '@airspring/core/duct';
import type { Impossible } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { effectiveLength, lengthForTuning, severalVents, type Tuning, tuning } from '@airspring/core/vent';
import { check } from '../../ledger/check.js';
import flares from '../duct/flare.json' with { type: 'json' };

const air = { ...standardAir, speedOfSound: si('speed', 343.2) };
const sparse = { ...air, density: si('density', 1.2) };
const m = (value: number) => si('length', value);

check('vent.tuning.slot', {
  formula: 'vent/tuning',
  source: {
    key: 'rayleigh1896',
    locator: 'sec. 302 for both ends of a rectangle, from the table of aspect ratios; secs. 303-307',
  },
  status: 'derived',
  kind: 'table',
  given: {
    width: { value: [0.3, 0.1, 0.2], unit: 'm' },
    height: { value: [0.03, 0.1, 0.1], unit: 'm' },
    L: { value: [0.25, 0.12, 0.12], unit: 'm' },
  },
  got: ({ width, height, L }) => {
    const vent = { width: m(width), height: m(height), length: m(L), innerEnd: rectangularPiston };
    const result = tuning({ vent, netVolume: '60 L' }, air);
    return result.ok ? result.fb : Number.NaN;
  },
  expected: [37.55042804, 48.13225984, 63.06693551],
  unit: 'Hz',
  tolerance: { relative: 1e-9, why: 'closed formula' },
});

const rounded = flares.filter(([R]) => R! > 0 && R! <= 2);

check('vent.effective-length.flared', {
  formula: 'vent/effectiveLength',
  source: { key: 'scipy', locator: 'finite elements for the potential flow out of a quarter round into a wide wall' },
  status: 'derived',
  kind: 'program',
  given: { R: { value: rounded.map(([R]) => R!), unit: '1' } },
  got: ({ R }) => {
    const end = flared({ radius: m(0.03 * R) });
    return effectiveLength({ vent: { diameter: '60 mm', length: '200 mm', innerEnd: end, outerEnd: end } });
  },
  expected: rounded.map(([R, beyond]) => 0.2 + 2 * 0.03 * (beyond! - R!)),
  unit: 'm',
  tolerance: { relative: 0.004, why: 'an end is met within 0.9 %, and both are less than half of the whole' },
});

/** Ends that do not depend on frequency. */
const ends = { innerEnd: pistonInFlange, outerEnd: pistonInFlange };
const round = (d: number, L: number, count = 1) => ({ diameter: m(d), length: m(L), count, ...ends });
const sets = [
  { vents: [round(0.075, 0.15), round(0.05, 0.08)], netVolume: si('volume', 0.06) },
  { vents: [round(0.1, 0.3, 2), round(0.06, 0.05)], netVolume: si('volume', 0.2) },
  { vents: [round(0.03, 0.02), round(0.03, 0.6), round(0.12, 0.4)], netVolume: si('volume', 0.1) },
];
const of = (set: number) => {
  const result = severalVents(sets[set]!, air);
  if (!result.ok) throw new Error('not possible');
  return result;
};
const source = {
  key: 'rayleigh1896',
  locator: 'secs. 302-307: conductances S/(L + 16a/(3π)) side by side, added up apart',
};

check('vent.several.fb', {
  formula: 'vent/severalVents',
  source,
  status: 'derived',
  kind: 'table',
  given: { set: { value: [0, 1, 2], unit: '1' } },
  got: ({ set }) => of(set).fb,
  expected: [42.72699346, 32.04273085, 34.2045173],
  unit: 'Hz',
  tolerance: { relative: 1e-9, why: 'closed formula' },
});

check('vent.several.shares', {
  formula: 'vent/severalVents',
  source,
  status: 'derived',
  kind: 'table',
  given: { set: { value: [0, 1, 2], unit: '1' } },
  got: ({ set }) => of(set).shares[0]!.flow,
  expected: [0.5632018438, 0.5929763066, 0.3964834671],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'closed formula' },
});

check('vent.several.speeds', {
  formula: 'vent/severalVents',
  source,
  status: 'derived',
  kind: 'table',
  given: { set: { value: [0, 1, 2], unit: '1' } },
  got: ({ set }) => of(set).shares[1]!.airSpeed,
  expected: [1.419594008, 2.668266434, 0.5187641054],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'closed formula' },
});

/** Two tubes through a panel, in a box told without them. */
const pair = { diameter: '75 mm', wall: '3 mm', count: 2, ...ends } as const;
const told = { volumeBeforeVent: '40 L', panelThickness: '18 mm' } as const;
const leavesOf = (result: Tuning | Impossible) => {
  if (!result.ok) throw new Error('not possible');
  const { fb, length, netVolume, volumeBeforeVent, effectiveLength, acousticMass } = result;
  return [fb, length, netVolume, volumeBeforeVent, effectiveLength, acousticMass];
};
for (const [name, formula, result] of [
  ['tuning', 'vent/tuning', () => tuning({ vent: { ...pair, length: '15 cm' }, ...told }, sparse)],
  [
    'length',
    'vent/lengthForTuning',
    () => lengthForTuning({ vent: pair, fb: si('frequency', 56.507830182401), ...told }, sparse),
  ],
] as const) {
  check(`vent.${name}.every-field`, {
    formula,
    source: { key: 'rayleigh1896', locator: 'secs. 302-307: nS/(Vℓ), V = V₀ − nS₀(L − t), ρℓ/(nS), worked out apart' },
    status: 'derived',
    kind: 'example',
    given: { vents: { value: 'two, 75 mm wide, 150 mm long, walls of 3 mm, in 40 L, panel 18 mm', unit: '' } },
    got: () => leavesOf(result()),
    expected: [56.507830182401, 0.15, 0.038639608699587, 0.04, 0.21366197723676, 29.017907053242],
    unit: 'Hz, m, m³, m³, m, kg/m⁴',
    tolerance: { relative: 3e-13, why: 'fourteen digits' },
  });
}

check('vent.several.every-field', {
  formula: 'vent/severalVents',
  source,
  status: 'derived',
  kind: 'example',
  given: { of: { value: 'area, mass, volume; then flow, area, length and mass of each', unit: '' } },
  got: () => {
    const result = severalVents(sets[0]!, sparse);
    if (!result.ok) throw new Error('not possible');
    return [
      ...[result.area, result.acousticMass, result.netVolume],
      ...result.shares.flatMap((one) => [one.flow, one.area, one.effectiveLength, one.acousticMass]),
    ];
  },
  expected: [
    ...[0.0063813600776043, 32.685877511431, 0.06],
    ...[0.56320184380388, 0.0044178646691106, 0.21366197723676, 58.035814106484],
    ...[0.43679815619612, 0.0019634954084936, 0.12244131815784, 74.830621530269],
  ],
  unit: 'm², kg/m⁴, m³, 1, m',
  tolerance: { relative: 3e-13, why: 'fourteen digits' },
});
