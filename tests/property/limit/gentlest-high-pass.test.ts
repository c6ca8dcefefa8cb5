import type { Driver } from '@airspring/core/driver';
import type { System } from '@airspring/core/enclosure';
import {
  besselShape,
  butterworthShape,
  chebyshevShape,
  type FilterShape,
  filterLevel,
  highPass,
  legendreShape,
  linkwitzRileyShape,
} from '@airspring/core/filter';
import { currentLimit, gentlestHighPass, greatestLevel, type Limit, travelLimit } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import * as fc from 'fast-check';
import { expect } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';
import { closedOf, ventedOf } from '../../literature/enclosure/textbook.js';

const shapes: readonly FilterShape[] = [
  ...[1, 2, 3, 4, 8].map(butterworthShape),
  ...[2, 4, 8].map(besselShape),
  ...[2, 4, 8].map(linkwitzRileyShape),
  ...[3, 4].map(legendreShape),
  chebyshevShape(4, { ripple: 0.5 }),
  { name: 'of a stranger', denominator: [1, 2.2, 1.7, 0.6], sources: ['invented'] },
];
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const boxes: fc.Arbitrary<System> = fc.oneof(
  number(0.4, 1.5).map((Qtc) => closedOf({ Qtc, fc: 45 })),
  fc
    .record({ QL: number(3, 20), Qts: number(0.2, 0.6), h: number(0.7, 1.5), alpha: number(0.4, 5) })
    .map((row) => ventedOf(row)),
);
const XMAX = 0.006;
function limitsOf(system: System, amperes: number): readonly Limit[] {
  const { driver } = (system.spec as { drivers: { driver: Driver } }).drivers;
  return [...travelLimit({ ...driver, Xmax: si('displacementPeak', XMAX) }), currentLimit(si('currentRms', amperes))];
}
// Another grid than that of the search, and denser.
const fine = logarithmicGrid(1.0007, 199.7, 4001);

/** The greatest share of what the limits allow that a drive behind a high-pass uses. */
function worst(system: System, limits: readonly Limit[], drive: number, shape: FilterShape, corner: number): number {
  const most = greatestLevel(system, limits, fine).driveVoltageRms;
  const passed = filterLevel(highPass(shape, si('frequency', corner)), fine);
  return passed.reduce((top, level, i) => Math.max(top, (drive * 10 ** (level / 20)) / most[i]!), 0);
}

test.prop([boxes, number(0.15, 0.95), number(2, 60)], { numRuns: cases(40) })(
  'at the corner every limit holds at every frequency; one per cent lower one is broken',
  (system, share, amperes) => {
    const limits = limitsOf(system, amperes);
    const still = greatestLevel(system, limits.slice(0, 1), [1e-3]).driveVoltageRms[0]!;
    const drive = still / share;
    const found = gentlestHighPass(system, limits, { driveVoltageRms: si('voltageRms', drive), candidates: shapes });
    if (!found.ok) {
      expect(['safe-throughout', 'above-at-end', 'no-filter-holds']).toContain(found.because[0]?.code);
      return;
    }
    expect(found.candidates.length + found.unsuited.length).toBe(shapes.length);
    for (const { shape, corner, binding, bindingAt, cost } of found.candidates) {
      expect(worst(system, limits, drive, shape, corner)).toBeLessThanOrEqual(1 + 1e-8);
      expect(worst(system, limits, drive, shape, 0.99 * corner)).toBeGreaterThan(1);
      expect(limits.map(({ name }) => name)).toContain(binding);
      expect(bindingAt).toBeGreaterThanOrEqual(1);
      expect(Object.values(cost).every(Number.isFinite)).toBe(true);
    }
    // The gentlest is first.
    const depths = found.candidates.map(({ cost }) => Math.round(10 * cost.depth));
    expect(depths).toEqual([...depths].sort((a, b) => a - b));
  },
  60_000,
);
