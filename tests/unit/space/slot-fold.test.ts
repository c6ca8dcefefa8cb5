import { si } from '@airspring/core/quantity';
import { fit, longestVent } from '@airspring/core/space';
import { tuning } from '@airspring/core/vent';
import { describe, expect, test } from 'vitest';

const metres = (value: number) => si('length', value);
const height = 0.03;
const space = {
  outer: { width: metres(0.4), height: metres(0.42), depth: metres(0.38) },
  thickness: metres(0.018),
  driver: { outerDiameter: metres(0.16), cutoutDiameter: metres(0.14), depth: metres(0.07) },
};

describe('the fold of a slot', () => {
  test.each(['none', 'one', 'two'] as const)('is as long where it is placed as where it is tuned: %s', (along) => {
    const slot = { width: metres(0.15), height: metres(height), wall: metres(0.012), along };
    const { bent } = longestVent({ ...space, vent: slot });
    const placed = fit({ ...space, vent: { ...slot, length: bent } });
    if (!placed.ok) throw new Error('the longest slot fits');
    const fold = placed.placement.vent?.bend?.length as number;
    const bend = { angle: si('angle', Math.PI / 2), centreLineRadius: metres(height / 2) };
    // The tuning takes the very radius of the fold and refuses a sharper one.
    const tuned = tuning({ vent: { ...slot, length: bent, bend }, netVolume: si('volume', 0.04) });
    expect(tuned.ok).toBe(true);
    expect(fold).toBeCloseTo(bend.angle * bend.centreLineRadius, 12);
    const sharper = { ...bend, centreLineRadius: metres(height / 2 - 1e-4) };
    expect(() => tuning({ vent: { ...slot, length: bent, bend: sharper }, netVolume: si('volume', 0.04) })).toThrow(
      'half the side',
    );
  });

  test.each([
    ['none', 0.38],
    ['one', 0.38],
    ['two', 0.38],
    ['none', 0.1],
    ['one', 0.078],
    ['two', 0.078],
  ] as const)('has legs of at least the thickness of a board: %s, %f m deep', (along, depth) => {
    const wall = 0.012;
    const outer = { ...space.outer, depth: metres(depth) };
    const driver = depth < 0.2 ? { ...space.driver, depth: metres(0.03) } : space.driver;
    const slot = { width: metres(0.15), height: metres(height), wall: metres(wall), along };
    const { straight, bent } = longestVent({ ...space, outer, driver, vent: slot });
    let [first, second, folded] = [Infinity, Infinity, 0];
    for (let length: number = straight; length <= bent; length += 1e-3) {
      const vent = { ...slot, bends: 'one-bend' as const, length: metres(length) };
      const placed = fit({ ...space, outer, driver, vent });
      const { firstLeg = 0, bend } = (placed.ok && placed.placement.vent) || {};
      if (bend === undefined) continue;
      folded++;
      first = Math.min(first, firstLeg - space.thickness);
      second = Math.min(second, bend.secondLeg);
    }
    expect(folded).toBeGreaterThan(20);
    // Lengths are compared within a nanometre.
    expect(first).toBeGreaterThan(wall - 1.01e-9);
    expect(second).toBeGreaterThan(wall - 1.01e-9);
    expect(Math.min(first, second)).toBeLessThan(wall + 0.02);
  });

  test.each([
    ['none', 0.09],
    ['one', 0.078],
    ['two', 0.078],
  ] as const)('has room behind its panel for the boards of both legs: %s, from %f m', (along, depth) => {
    // Two panels, the air, the inner board of the second leg, and a free slot's outer one.
    const vent = { width: metres(0.15), height: metres(height), wall: metres(0.012), along };
    const deep = (more: number) => {
      const outer = { ...space.outer, depth: metres(depth + more) };
      const driver = { ...space.driver, depth: space.thickness };
      return longestVent({ ...space, outer, driver, vent }).bent;
    };
    expect(deep(-1e-6)).toBe(0);
    expect(deep(0)).toBeGreaterThan(0.3);
  });
});
