import { standardAir } from '@airspring/core/air';
import { radiationLoad, resonance, tubeMass } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';
import { anyFrequency, anyLength, anyVolume } from '../../arbitrary/vent.js';

const finite = (value: number) => value > 0 && Number.isFinite(value);

test.prop([anyVolume, anyLength, anyLength], { numRuns: fuzzRuns })(
  'resonance of tube mass and cavity: two roads',
  (volume, diameter, length) => {
    const area = si('area', Math.min(1e4, Math.max(1e-10, Math.PI * (diameter / 2) ** 2)));
    const d = si('length', 2 * Math.sqrt(area / Math.PI));
    const { frequency } = resonance({ volume, area, length });
    const compliance = volume / (standardAir.density * standardAir.speedOfSound ** 2);
    const other = 1 / (2 * Math.PI * Math.sqrt(tubeMass({ diameter: d, length }) * compliance));
    expect(Math.abs(frequency / other - 1)).toBeLessThan(1e-12);
  },
);

test.prop([anyLength, anyFrequency], { numRuns: fuzzRuns })(
  'radiation load is positive and finite',
  (diameter, frequency) => {
    const { mass, resistance } = radiationLoad({ diameter, frequency });
    expect(finite(mass) && finite(resistance)).toBe(true);
  },
);
