import { standardAir } from '@airspring/core/air';
import { InputError } from '@airspring/core/fault';
import { type Length, si, type Volume } from '@airspring/core/quantity';
import {
  acousticMass,
  airSpeedPeak,
  airSpeedRms,
  compileLengthForTuning,
  effectiveLength,
  lengthForTuning,
  type RoundVentSection,
  tuning,
} from '@airspring/core/vent';
import fc from 'fast-check';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';
import {
  anyFrequency,
  anyLength,
  anySection,
  anyVent,
  anyVolume,
  boxVolume,
  ventLength,
  ventSection,
} from '../../arbitrary/vent.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const volume = boxVolume.map((value) => si('volume', value));
const panel = between(0.001, 0.05).map((value) => si('length', value));
const close = (got: number, expected: number, relative = 1e-12) =>
  expect(Math.abs(got / expected - 1)).toBeLessThanOrEqual(relative);

const fbOf = (section: RoundVentSection, length: Length, netVolume: Volume, air = standardAir): number => {
  const result = tuning({ vent: { ...section, length }, netVolume }, air);
  return result.ok ? result.fb : Number.NaN;
};

test.prop([ventSection, ventLength, volume])('length → tuning → length', (vent, length, netVolume) => {
  const fb = si('frequency', fbOf(vent, length, netVolume));
  const back = lengthForTuning({ vent, netVolume, fb });
  // The rounding of fb is magnified by effective over tube length.
  close(back.ok ? back.length : Number.NaN, length);
});

test.prop([ventSection, volume, panel, between(15, 80)])(
  'tuning → length → tuning, volume before the vent',
  (vent, volumeBeforeVent, panelThickness, fb) => {
    const found = lengthForTuning({ vent, volumeBeforeVent, panelThickness, fb: si('frequency', fb) });
    if (!found.ok) return;
    const back = tuning({ vent: { ...vent, length: found.length }, volumeBeforeVent, panelThickness });
    close(back.ok ? back.fb : Number.NaN, fb);
    close(found.netVolume, back.ok ? back.netVolume : Number.NaN);
    close(fbOf(vent, found.length, found.netVolume), fb);
  },
);

test.prop([ventSection, volume, between(15, 80)])('the compiled length is the length', (vent, netVolume, fb) => {
  const compiled = compileLengthForTuning(vent)(netVolume, fb);
  const found = lengthForTuning({ vent, netVolume, fb: si('frequency', fb) });
  expect(found.ok).toBe(compiled > 0);
  if (found.ok) expect(Math.abs(found.length - compiled)).toBeLessThanOrEqual(1e-12 * found.effectiveLength);
});

test.prop([between(0.02, 0.1), ventLength, volume, between(0.2, 5), between(0.5, 2)])(
  'scaling: metres × s, seconds × t',
  (diameter, length, netVolume, s, t) => {
    const fast = { ...standardAir, speedOfSound: si('speed', (standardAir.speedOfSound * s) / t) };
    const section = (factor: number) => ({ diameter: si('length', diameter * factor) });
    const scaled = fbOf(section(s), si('length', length * s), si('volume', netVolume * s ** 3), fast);
    close(scaled, fbOf(section(1), length, netVolume) / t);
  },
);

test.prop([ventSection, ventLength, volume, between(1.01, 2)])(
  'longer → lower, more volume → lower',
  (vent, length, netVolume, factor) => {
    const fb = fbOf(vent, length, netVolume);
    expect(fbOf(vent, si('length', length * factor), netVolume)).toBeLessThan(fb);
    expect(fbOf(vent, length, si('volume', netVolume * factor))).toBeLessThan(fb);
  },
);

test.prop([between(0.02, 0.08), ventLength, volume, between(1.01, 2)])(
  'wider → higher',
  (diameter, length, netVolume, factor) => {
    const at = (d: number) => fbOf({ diameter: si('length', d) }, length, netVolume);
    expect(at(diameter * factor)).toBeGreaterThan(at(diameter));
  },
);

test.prop([ventSection, ventLength, volume])('mass and compliance resonate at fb', (section, length, netVolume) => {
  const vent = { ...section, length };
  const fb = si('frequency', fbOf(section, length, netVolume));
  const compliance = netVolume / (standardAir.density * standardAir.speedOfSound ** 2);
  close(1 / (2 * Math.PI * Math.sqrt(acousticMass({ vent, frequency: fb }) * compliance)), fb);
});

/** A number, a result, or the one error: nothing else, and no number that does not exist. */
function sound(of: () => unknown): void {
  let got: unknown;
  try {
    got = of();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return;
  }
  const numbers =
    typeof got === 'object' && got !== null ? Object.values(got).filter((v) => typeof v === 'number') : [got];
  expect(numbers.every((value) => Number.isFinite(value))).toBe(true);
  expect(JSON.stringify(got)).not.toMatch(/NaN|Infinity/);
}

const air = fc.constant(standardAir);
const volumeKey = fc.constantFrom('netVolume', 'volumeBeforeVent');

test.prop([anyVent, volumeKey, anyVolume, anyLength, air], { numRuns: fuzzRuns })(
  'any vent: tuning',
  (vent, key, v, panelThickness, medium) => {
    sound(() => tuning({ vent, [key]: v, panelThickness }, medium));
    sound(() => tuning({ vent, [key]: v }, medium));
  },
);

test.prop([anySection, volumeKey, anyVolume, anyLength, anyFrequency], { numRuns: fuzzRuns })(
  'any section: length',
  (vent, key, v, panelThickness, fb) => {
    sound(() => lengthForTuning({ vent, fb, [key]: v, panelThickness }));
    sound(() => lengthForTuning({ vent, fb, [key]: v }));
    sound(() => compileLengthForTuning(vent)(v, fb));
  },
);

test.prop([anyVent, anyFrequency], { numRuns: fuzzRuns })('any vent: effective length and mass', (vent, frequency) => {
  sound(() => effectiveLength({ vent, frequency }));
  sound(() => acousticMass({ vent, frequency }));
});

test.prop([anyLength, fc.integer({ min: 1, max: 1000 }), between(1e-12, 1e4)], { numRuns: fuzzRuns })(
  'any flow: air speed',
  (diameter, count, flow) => {
    sound(() => airSpeedPeak({ diameter, count, flowPeak: si('volumeFlow', flow) }));
    sound(() => airSpeedRms({ diameter, count, flowRms: si('volumeFlow', flow) }));
  },
);
