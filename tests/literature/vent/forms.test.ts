import { standardAir } from '@airspring/core/air';
import { flared, pistonInFlange, rectangularPiston } from '@airspring/core/duct';
import type { Impossible } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { effectiveLength, lengthForTuning, severalVents, type Tuning, tuning } from '@airspring/core/vent';
import { checkIn } from '../../ledger/check.js';
import flares from '../duct/flare.json' with { type: 'json' };
import relations from '../duct/relations.json' with { type: 'json' };

const air = { ...standardAir, speedOfSound: si('speed', 343.2) };
const check = checkIn(air);
const sparse = { ...air, density: si('density', 1.2) };
const m = (value: number) => si('length', value);

check('vent.tuning.slot', {
  formula: 'vent/tuning',
  source: {
    key: 'mpmath',
    locator: 'sec. 302 for both ends of a rectangle, by quadrature; secs. 303-307 (rayleigh1896); script relations.py',
  },
  status: 'derived',
  kind: 'program',
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
  expected: relations['vent.tuning.slot'],
  unit: 'Hz',
  tolerance: { relative: 1e-14, why: 'double precision' },
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
  key: 'mpmath',
  locator: 'eigsy: masses (L + 16a/(3π))/S on the spring of one box (rayleigh1896); script relations.py',
};

check('vent.several.fb', {
  formula: 'vent/severalVents',
  source,
  status: 'derived',
  kind: 'program',
  given: { set: { value: [0, 1, 2], unit: '1' } },
  got: ({ set }) => of(set).fb,
  expected: relations['vent.several.fb'],
  unit: 'Hz',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('vent.several.shares', {
  formula: 'vent/severalVents',
  source,
  status: 'derived',
  kind: 'program',
  given: { set: { value: [0, 1, 2], unit: '1' } },
  got: ({ set }) => of(set).shares[0]!.flow,
  expected: relations['vent.several.shares'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('vent.several.speeds', {
  formula: 'vent/severalVents',
  source,
  status: 'derived',
  kind: 'program',
  given: { set: { value: [0, 1, 2], unit: '1' } },
  got: ({ set }) => of(set).shares[1]!.airSpeed,
  expected: relations['vent.several.speeds'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'double precision' },
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
    () => lengthForTuning({ vent: pair, fb: si('frequency', relations['vent.every-field'][0]!), ...told }, sparse),
  ],
] as const) {
  check(`vent.${name}.every-field`, {
    formula,
    source: {
      key: 'mpmath',
      locator: 'eigsy: two masses ρℓ/S on one spring, V = V₀ − nS₀(L − t) (rayleigh1896); script relations.py',
    },
    status: 'derived',
    kind: 'program',
    given: { vents: { value: 'two, 75 mm wide, 150 mm long, walls of 3 mm, in 40 L, panel 18 mm', unit: '' } },
    got: () => leavesOf(result()),
    expected: relations['vent.every-field'],
    unit: 'Hz, m, m³, m³, m, kg/m⁴',
    tolerance: { relative: 1e-14, why: 'double precision' },
  });
}

check('vent.several.every-field', {
  formula: 'vent/severalVents',
  source,
  status: 'derived',
  kind: 'program',
  given: { of: { value: 'area, mass, volume; then flow, area, length and mass of each', unit: '' } },
  got: () => {
    const result = severalVents(sets[0]!, sparse);
    if (!result.ok) throw new Error('not possible');
    return [
      ...[result.area, result.acousticMass, result.netVolume],
      ...result.shares.flatMap((one) => [one.flow, one.area, one.effectiveLength, one.acousticMass]),
    ];
  },
  expected: relations['vent.several.every-field'],
  unit: 'm², kg/m⁴, m³, 1, m',
  tolerance: { relative: 1e-14, why: 'double precision' },
});
