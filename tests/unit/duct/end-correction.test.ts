import {
  type EndCorrection,
  finiteFlange,
  flanged,
  type Opening,
  pistonInFlange,
  unflanged,
} from '@airspring/core/duct';
import { describe, expect, it } from 'vitest';

describe('end corrections', () => {
  it('gives the numbers of its examples', () => {
    expect(unflanged({ radius: 0.05 }, 0)).toBeCloseTo(0.030665, 6);
    expect(flanged({ radius: 0.05 }, 0)).toBeCloseTo(0.04108, 6);
    expect(finiteFlange({ radius: 0.05, flangeRadius: 0.1 }, 0)).toBeCloseTo(0.037253, 6);
    expect(pistonInFlange({ radius: 0.05 }, 0)).toBeCloseTo(0.042441, 6);
  });

  it('orders free, flanged, piston', () => {
    const opening = { radius: 0.04, flangeRadius: 0.08 };
    const lengths = [unflanged, finiteFlange, flanged, pistonInFlange].map((end) => end(opening, 0));
    expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
  });

  it('takes the wider of flange and wall', () => {
    const both = finiteFlange({ radius: 0.04, flangeRadius: 0.041, wall: 0.04 }, 1);
    expect(both).toBe(finiteFlange({ radius: 0.04, flangeRadius: 0.08 }, 1));
  });

  it('carries name and sources, one of a stranger too', () => {
    const mine: EndCorrection = Object.assign((o: Opening) => 0.7 * o.radius, { sources: ['my-measurement'] });
    for (const end of [unflanged, flanged, finiteFlange, pistonInFlange]) {
      expect(end.name).not.toBe('');
      expect(end.sources.length).toBeGreaterThan(0);
    }
    expect(mine({ radius: 1 }, 0)).toBe(0.7);
  });
});
