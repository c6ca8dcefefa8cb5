import { standardAir } from '@airspring/core/air';
import { resonance } from '@airspring/core/duct';
import { boundedMinimum, bracketedRoot } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
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

/** Volumes of the table of a bottle, cm³, and the tones that were heard, Hz. */
const bottle = {
  volumes: [100, 125, 150, 175, 200, 225, 250, 275, 300, 325, 350, 375, 400, 425, 450, 475, 500],
  tones: [355, 310, 280, 256, 239, 225, 212, 202, 193, 185, 178, 171, 165, 161, 156, 152, 146],
  section: 3.1e-4,
} as const;
const bottleEnds = (0.8216 + 0.6133) * Math.sqrt(bottle.section / Math.PI);

/** How far a neck of this length, as a line with two ends, is from the table at worst; `withNeck` where the volumes count its air. */
function bottleMisses(length: number, withNeck: boolean): number {
  const { section, volumes, tones } = bottle;
  const line = length + bottleEnds;
  const off = volumes.map((volume, i) => {
    const cavity = volume * 1e-6 - (withNeck ? section * length : 0);
    const root = bracketedRoot(
      (k) => Math.tan(k * line) - section / (k * cavity),
      1e-3,
      Math.PI / 2 / line - 1e-6,
      1e-9,
    );
    return root.ok ? Math.abs((root.x * air.speedOfSound) / (2 * Math.PI) / tones[i]! - 1) : 1;
  });
  return Math.max(...off);
}
const bestNeck = (withNeck: boolean) => boundedMinimum((length) => bottleMisses(length, withNeck), 0.055, 0.09);
const [cavityAlone, neckCounted] = [bestNeck(false), bestNeck(true)];
const percent = (part: number) => `${(100 * part).toFixed(1)} %`;

test('one neck meets the whole table of a bottle if its volumes count the air in the neck, and none does if they do not', () => {
  expect(cavityAlone.value).toBeGreaterThan(0.05);
  expect(neckCounted.value).toBeLessThan(0.0135);
});

// The table gives no neck: its effective length is chosen to meet the ninth row, so that row proves nothing.
check('duct.resonance.bottle', {
  formula: 'duct/resonance',
  source: { key: 'hyperphysics_bottle', locator: 'measured table' },
  status: 'seen',
  kind: 'measured',
  given: {
    V: { value: [...bottle.volumes], unit: 'cm³' },
    S: { value: 3.1, unit: 'cm²' },
    length: { value: 0.0827, unit: 'm' },
  },
  got: ({ V, S, length }) =>
    resonance({ volume: si('volume', V * 1e-6), area: si('area', S * 1e-4), length: si('length', length) }, air)
      .frequency,
  printed: bottle.tones.map(String),
  unit: 'Hz',
  tolerance: {
    relative: 0.07,
    why: `the formula takes the volumes for those of the cavity alone, and the tones of the table fall faster than with its square root. If the volumes count the air in the neck too, a neck of ${Math.round(1e3 * neckCounted.x)} mm, as a line with two ends, meets all ${bottle.tones.length} tones within ${percent(neckCounted.value)}; if they do not, no length comes nearer than ${percent(cavityAlone.value)}. The table does not say which it is`,
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
