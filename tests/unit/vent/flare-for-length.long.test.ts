import { finiteFlange, flared } from '@airspring/core/duct';
import { isInputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { type FlaredTube, type FlareForLengthInput, flareForLength, tuning, ventLoss } from '@airspring/core/vent';
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

const FLARES = 2000;
/** Each of many flares, its tube solved by halving on `tuning`, its loss by `ventLoss`: nothing of the search itself. */
property.prop(
  [
    fc.double({ min: 0.03, max: 1.5, noNaN: true }),
    fc.double({ min: 0.004, max: 0.3, noNaN: true }),
    fc.double({ min: 15, max: 90, noNaN: true }),
    fc.constantFrom('both' as const, 'outer' as const),
    fc.option(fc.constant('3 mm' as const), { nil: undefined }),
  ],
  { numRuns: Math.ceil(fuzzRuns / 50) },
)(
  'none of two thousand flares loses less, at the same tuning',
  (length, volume, frequency, flares, wall) => {
    const asked = { length: si('length', length), netVolume: si('volume', volume), fb: si('frequency', frequency) };
    const told = answered(() => flareForLength({ ...asked, flares, wall }));
    if (told === undefined) return;
    const vent = (diameter: number, flare: number) => ({
      diameter: si('length', diameter),
      length: asked.length,
      wall,
      ...(flare > 0 && {
        outerEnd: flared({ radius: si('length', flare) }),
        ...(flares === 'both' && { innerEnd: flared({ radius: si('length', flare), end: finiteFlange }) }),
      }),
    });
    const lostBy = (flare: number): number => {
      let [low, high] = [1e-4, told.straight.diameter * 1.001];
      for (let i = 0; i < 60; i++) {
        const middle = Math.sqrt(low * high);
        const tuned = tuning({ vent: vent(middle, flare), netVolume: asked.netVolume });
        if (tuned.ok && tuned.fb < frequency) low = middle;
        else high = middle;
      }
      const { outward, inward } = ventLoss({ vent: vent(low, flare) }).quadratic;
      return (outward + inward) / low ** 4;
    };
    const sharp = lostBy(0);
    const greatest = flares === 'both' ? length / 2 : length;
    const all = Array.from({ length: FLARES }, (_, i) => lostBy((greatest * (i + 1)) / FLARES) / sharp);
    const least = Math.min(1, ...all);
    expect(least).toBeGreaterThanOrEqual(told.leastLoss.lossRatio * (1 - 1e-6));
    expect(least / told.leastLoss.lossRatio - 1).toBeLessThan(2e-3);
  },
  600_000,
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
