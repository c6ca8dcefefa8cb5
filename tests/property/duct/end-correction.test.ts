import { finiteFlange, flanged, pistonInFlange, unflanged } from '@airspring/core/duct';
import fc from 'fast-check';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ends = fc.constantFrom(unflanged, flanged, finiteFlange, pistonInFlange);
const opening = fc.record({ radius: between(0.005, 0.2), flangeRadius: between(0.2, 1), wall: between(0, 0.02) });

test.prop([ends, opening, between(0, 10), between(0.1, 10)])('scaling: metres × s', (end, o, k, s) => {
  const scaled = { radius: o.radius * s, flangeRadius: o.flangeRadius * s, wall: o.wall * s };
  expect(Math.abs(end(scaled, k / s) / (s * end(o, k)) - 1)).toBeLessThan(1e-12);
});

// Up to the ka that the formula is for: far above it the fits of both limits cross.
test.prop([opening, between(0, 0.5)])('a flange lies between none and an infinite one', (o, ka) => {
  const k = ka / o.radius;
  const length = finiteFlange(o, k);
  expect(length).toBeGreaterThanOrEqual(unflanged(o, k) * (1 - 1e-12));
  expect(length).toBeLessThanOrEqual(flanged(o, k) * (1 + 1e-12));
});

test.prop([ends, between(1e-6, 1e3), between(0, 1e6)], { numRuns: fuzzRuns })(
  'is positive and finite',
  (end, radius, k) => {
    const length = end({ radius }, k);
    expect(length > 0 && Number.isFinite(length)).toBe(true);
  },
);
