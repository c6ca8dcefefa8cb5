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

  test.each(['none', 'one', 'two'] as const)('goes on for at least the edge of the inner board: %s', (along) => {
    const wall = 0.012;
    const slot = { width: metres(0.15), height: metres(height), wall: metres(wall), along };
    const { straight, bent } = longestVent({ ...space, vent: slot });
    let [least, folded] = [Infinity, 0];
    for (let length: number = straight; length <= bent; length += 1e-3) {
      const placed = fit({ ...space, vent: { ...slot, bends: 'one-bend', length: metres(length) } });
      const bend = placed.ok ? placed.placement.vent?.bend : undefined;
      if (bend === undefined) continue;
      folded++;
      least = Math.min(least, bend.secondLeg);
    }
    expect(folded).toBeGreaterThan(20);
    // Lengths are compared within a nanometre.
    expect(least).toBeGreaterThan(wall - 1.01e-9);
    expect(least).toBeLessThan(wall + 0.02);
  });
});
