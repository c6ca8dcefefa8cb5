import { finiteFlange, flanged, pistonInFlange, unflanged } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import type { RoundVentInput, RoundVentSection } from '@airspring/core/vent';
import fc from 'fast-check';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const metres = (min: number, max: number) => between(min, max).map((value) => si('length', value));
/** Even in the logarithm, for ranges over many powers of ten. */
const spread = (min: number, max: number) =>
  between(Math.log(min), Math.log(max)).map((x) => Math.min(max, Math.max(min, Math.exp(x))));

const ends = fc.constantFrom(unflanged, flanged, finiteFlange, pistonInFlange);

/** Vents as people build them, straight. */
export const ventSection: fc.Arbitrary<RoundVentSection> = fc.record(
  {
    diameter: metres(0.02, 0.16),
    count: fc.integer({ min: 1, max: 4 }),
    wall: metres(0.001, 0.006),
    innerFlangeDiameter: metres(0.18, 0.3),
    innerEnd: ends,
    outerEnd: ends,
  },
  { requiredKeys: ['diameter'] },
);

export const ventLength = metres(0.05, 0.6);

export const boxVolume = between(0.01, 0.3);

/** Whatever the types and the accepted magnitudes allow, sense or not. */
export const anySection: fc.Arbitrary<RoundVentSection> = fc.record(
  {
    diameter: spread(1e-6, 1e3).map((value) => si('length', value)),
    count: fc.integer({ min: 1, max: 1000 }),
    wall: fc.oneof(
      fc.constant(si('length', 0)),
      spread(1e-6, 1e3).map((value) => si('length', value)),
    ),
    innerFlangeDiameter: spread(1e-6, 1e3).map((value) => si('length', value)),
    outerFlangeDiameter: spread(1e-6, 1e3).map((value) => si('length', value)),
    innerEnd: ends,
    outerEnd: ends,
    bend: fc.record({
      angle: spread(1e-9, 10).map((value) => si('angle', value)),
      centreLineRadius: spread(1e-6, 1e3).map((value) => si('length', value)),
    }),
  },
  { requiredKeys: ['diameter'] },
);

export const anyVent: fc.Arbitrary<RoundVentInput> = fc
  .tuple(anySection, spread(1e-6, 1e3))
  .map(([section, length]) => ({ ...section, length: si('length', length) }));

export const anyVolume = spread(1e-9, 1e4).map((value) => si('volume', value));
export const anyFrequency = spread(1e-4, 1e7).map((value) => si('frequency', value));
export const anyLength = spread(1e-6, 1e3).map((value) => si('length', value));
