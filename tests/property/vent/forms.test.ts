import { flanged, flared, rectangularPiston } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import {
  acousticMass,
  compileVentAdmittance,
  lengthForTuning,
  type RoundVentSection,
  type SlotVentSection,
  severalVents,
  standingWaves,
  tuning,
  type VentShare,
} from '@airspring/core/vent';
import fc from 'fast-check';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';
import {
  anyFrequency,
  anyLength,
  anyVent,
  anyVolume,
  boxVolume,
  ventLength,
  ventSection,
} from '../../arbitrary/vent.js';
import { allFinite, answered } from '../answered.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const m = (value: number) => si('length', value);
const volume = boxVolume.map((value) => si('volume', value));
const along = fc.constantFrom('none', 'one', 'two' as const);
const slot: fc.Arbitrary<SlotVentSection> = fc
  .tuple(between(0.1, 0.5), between(0.01, 0.06), along)
  .map(([width, height, walls]) => ({ width: m(width), height: m(height), along: walls as 'none' }));
const flaredVent: fc.Arbitrary<RoundVentSection> = fc
  .tuple(between(0.03, 0.15), between(0.005, 0.02), between(0.005, 0.02))
  .map(([d, inner, outer]) => ({
    diameter: m(d),
    innerEnd: flared({ radius: m(inner) }),
    outerEnd: flared({ radius: m(outer) }),
  }));

test.prop([fc.oneof(slot, flaredVent), ventLength, volume])(
  'length → tuning → length, slots and flares',
  (vent, L, netVolume) => {
    const there = tuning({ vent: { ...vent, length: L }, netVolume });
    if (!there.ok) return expect.unreachable();
    const back = lengthForTuning({ vent, netVolume, fb: there.fb });
    expect(Math.abs((back.ok ? back.length : Number.NaN) / L - 1)).toBeLessThan(1e-11);
  },
);

test.prop([fc.array(fc.tuple(ventSection, ventLength), { minLength: 1, maxLength: 4 }), volume])(
  'several vents: the shares make one, and the mass resonates with the box',
  (list, netVolume) => {
    const vents = list.map(([section, length]) => ({ ...section, length }));
    const result = severalVents({ vents, netVolume });
    if (!result.ok) return expect.unreachable();
    const sum = (of: (share: VentShare) => number) => result.shares.reduce((s, x) => s + of(x), 0);
    expect(sum(({ flow }) => flow)).toBeCloseTo(1, 12);
    expect(sum(({ area, airSpeed }) => (area * airSpeed) / result.area)).toBeCloseTo(1, 12);
    expect(sum(({ acousticMass: mass }) => result.acousticMass / mass)).toBeCloseTo(1, 12);
    const one = tuning({ vent: vents[0]!, netVolume });
    if (one.ok) expect(result.fb).toBeGreaterThanOrEqual(one.fb * (1 - 1e-12));
  },
);

test.prop([between(0.03, 0.1), ventLength, between(0.3, 3)])(
  'standing waves scale with size, but for friction',
  (d, L, s) => {
    const first = (scale: number) =>
      standingWaves({ vent: { diameter: m(d * scale), length: m(L * scale) }, most: 1 })[0]!.frequency;
    expect(Math.abs((first(s) * s) / first(1) - 1)).toBeLessThan(0.02);
  },
);

test.prop([fc.oneof(slot, ventSection), ventLength, between(1, 2000)])(
  'a vent takes power and gives none',
  (section, L, f) => {
    const [re, im] = [new Float64Array(1), new Float64Array(1)];
    compileVentAdmittance({ vent: { ...section, length: L } })(Float64Array.of(f), re, im);
    expect(re[0]).toBeGreaterThan(0);
  },
);

const anyFlare = anyLength.map((radius) => flared({ radius }));
const anySlot = fc.record(
  {
    width: anyLength,
    height: anyLength,
    length: anyLength,
    count: fc.integer({ min: 1, max: 1000 }),
    wall: anyLength,
    along: along as fc.Arbitrary<'none'>,
    innerEnd: fc.constantFrom(rectangularPiston, flanged),
  },
  { requiredKeys: ['width', 'height', 'length'] },
);
const anyFlaredVent = fc.record(
  { diameter: anyLength, length: anyLength, innerEnd: anyFlare, outerEnd: anyFlare },
  { requiredKeys: ['diameter', 'length'] },
);
const anyForm = fc.oneof(anySlot, anyFlaredVent, anyVent);

test.prop([anyForm, anyVolume, anyFrequency], { numRuns: fuzzRuns })('any form: tuning, length, line', (vent, v, f) => {
  for (const key of ['netVolume', 'volumeBeforeVent'] as const) {
    allFinite(answered(() => tuning({ vent, [key]: v })));
    const { length: _, ...section } = vent;
    allFinite(answered(() => lengthForTuning({ vent: section, fb: f, [key]: v })));
    allFinite(answered(() => severalVents({ vents: [vent, vent], [key]: v })));
  }
  allFinite(answered(() => acousticMass({ vent, frequency: f })));
  const [re, im] = [new Float64Array(1), new Float64Array(1)];
  answered(() => compileVentAdmittance({ vent })(Float64Array.of(f), re, im));
  allFinite([re, im]);
});

test.prop([anyForm, fc.integer({ min: 1, max: 3 })], { numRuns: Math.ceil(fuzzRuns / 10) })(
  'any form: standing waves',
  (vent, most) => {
    allFinite(answered(() => standingWaves({ vent, most })));
  },
);
