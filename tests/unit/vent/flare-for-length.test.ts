import { isInputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { type FlaredTube, type FlareForLengthInput, flareForLength, tuning } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test as property } from '../../arbitrary/property.js';
import { allFinite, answered } from '../../property/answered.js';

const input = { length: '25 cm', fb: '27 Hz', netVolume: '45 L' } as const;
const gain = (one: FlaredTube, other: FlaredTube, side: 'low' | 'high' = 'high') =>
  20 * Math.log10(one.quietFlowPeak[side] / other.quietFlowPeak[side]);

test('the best flares lie between none and the largest, and listeners heard as much of them', () => {
  const { straight, leastLoss, quietest } = flareForLength(input);
  for (const { flare, diameter } of [leastLoss, quietest]) {
    expect(flare).toBeGreaterThan(0.005);
    expect(flare).toBeLessThan(0.05);
    expect(diameter).toBeLessThan(straight.diameter);
  }
  // The published range of bezzola2019, for tubes of other sizes.
  expect(gain(quietest, straight)).toBeGreaterThan(10);
  expect(gain(quietest, straight)).toBeLessThan(16);
  // If the jet leaves the narrowest place, no flare helps a tube that must be narrower for it.
  expect(gain(quietest, straight, 'low')).toBeLessThan(0);
  expect(straight.quietFlowPeak.low).toBe(straight.quietFlowPeak.high);
});

test('of a tube that stays as wide the loss stops falling where the printed table ends, and its mass falls', () => {
  const { straight, leastLoss } = flareForLength({ length: '25 cm', fb: '27 Hz', diameter: '64 mm', flares: 'outer' });
  expect(leastLoss.flare).toBeGreaterThanOrEqual(0.2 * 0.064);
  expect(leastLoss.flare).toBeLessThan(0.2 * 0.064 + 0.0026);
  expect(leastLoss.diameter).toBe(straight.diameter);
  expect(leastLoss.effectiveLength).toBeLessThan(straight.effectiveLength);
});

property.prop([fc.double({ min: 0.05, max: 1, noNaN: true }), fc.double({ min: 0.005, max: 0.2, noNaN: true })])(
  'each tube tunes the volume, and no other flare is better',
  (length, volume) => {
    const asked = { length: si('length', length), netVolume: si('volume', volume), fb: si('frequency', 30) };
    const { straight, leastLoss, quietest } = flareForLength(asked);
    const tuned = tuning({ vent: { diameter: straight.diameter, length: asked.length }, netVolume: asked.netVolume });
    expect(tuned.ok && tuned.fb).toBeCloseTo(30, 8);
    for (const one of [straight, leastLoss, quietest]) {
      expect(leastLoss.lossRatio).toBeLessThanOrEqual(one.lossRatio);
      expect(quietest.quietFlowPeak.high).toBeGreaterThanOrEqual(one.quietFlowPeak.high);
      expect(one.mouthDiameter).toBeCloseTo(one.diameter + 2 * one.flare, 12);
    }
  },
);

const metres = (value: number) => si('length', value);
property.prop([fc.double({ min: 0.5, max: 2, noNaN: true })])(
  'a tube that is larger all round at a slower tuning has larger flares alike, as long as the air only moves',
  (scale) => {
    const moved = { name: 'moved', basis: '', sources: [], at: ({ radius = 0 }) => ({ displacementPeak: radius }) };
    const of = (s: number) =>
      flareForLength({
        length: metres(0.25 * s),
        netVolume: si('volume', 0.045 * s ** 3),
        fb: si('frequency', 27 / s),
        onsets: [moved],
      });
    const [one, other] = [of(1), of(scale)];
    expect(other.leastLoss.flare / scale).toBeCloseTo(one.leastLoss.flare, 7);
    expect(other.straight.diameter / scale).toBeCloseTo(one.straight.diameter, 9);
  },
);

const span = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp);
property.prop([span(1e-6, 1e3), span(1e-4, 1e7), span(1e-9, 1e4), fc.boolean()], { numRuns: Math.ceil(fuzzRuns / 10) })(
  'any length, tuning and volume or width has an answer of finite numbers, or is refused',
  (length, fb, value, isWidth) => {
    const kept = isWidth ? { diameter: si('length', value) } : { netVolume: si('volume', value) };
    allFinite(answered(() => flareForLength({ length: si('length', length), fb: si('frequency', fb), ...kept })));
  },
);

test.each<[string, object, string]>([
  ['netVolume', { ...input, diameter: '6 cm' }, 'conflict'],
  ['netVolume', { length: '25 cm', fb: '27 Hz' }, 'empty'],
  ['length', { ...input, length: '25 Hz' }, 'unit'],
  ['flares', { ...input, flares: 'inner' }, 'unknown-field'],
  ['fb', { ...input, netVolume: si('volume', 1e-9), fb: si('frequency', 1e-4) }, 'inconsistent'],
  ['onsets', { ...input, onsets: [] }, 'empty'],
])('%s is refused where it stands', (path, asked, code) => {
  try {
    flareForLength(asked as FlareForLengthInput);
    expect.unreachable();
  } catch (error) {
    expect(isInputError(error) && error.faults[0]).toMatchObject({ path, code });
  }
});
