import { type EndCorrection, finiteFlange, unflanged } from '@airspring/core/duct';
import { acousticMass, effectiveLength } from '@airspring/core/vent';
import { describe, expect, it } from 'vitest';

const vent = { diameter: '75 mm', length: '150 mm' } as const;
const own = (length: number): EndCorrection => Object.assign(() => length, { sources: ['own'] });

describe('effective length', () => {
  it('gives the numbers of its examples', () => {
    expect(effectiveLength({ vent })).toBeCloseTo(0.2038, 4);
    expect(acousticMass({ vent: { ...vent, count: 2 } })).toBeCloseTo(27.7, 1);
  });

  it('takes an inner end without wall and flange for a free one', () => {
    expect(effectiveLength({ vent, frequency: '40 Hz' })).toBeCloseTo(
      effectiveLength({ vent: { ...vent, innerEnd: unflanged }, frequency: '40 Hz' }),
      15,
    );
  });

  it('uses wall and flanges', () => {
    const plain = effectiveLength({ vent });
    expect(effectiveLength({ vent: { ...vent, wall: '3 mm' } })).toBeGreaterThan(plain);
    expect(effectiveLength({ vent: { ...vent, innerFlangeDiameter: '120 mm' } })).toBeGreaterThan(plain);
    const front = { ...vent, outerEnd: finiteFlange, outerFlangeDiameter: '300 mm' } as const;
    expect(effectiveLength({ vent: front })).toBeLessThan(plain);
  });

  it("uses a stranger's end corrections as its own, and refuses those that make nonsense", () => {
    const vents = { ...vent, innerEnd: own(0.01), outerEnd: own(0.02) };
    expect(effectiveLength({ vent: vents })).toBeCloseTo(0.18, 12);
    expect(() => effectiveLength({ vent: { ...vent, outerEnd: own(Number.NaN) } })).toThrowError(
      expect.objectContaining({ faults: [expect.objectContaining({ code: 'not-finite', path: 'vent.outerEnd' })] }),
    );
    expect(() => effectiveLength({ vent: { ...vent, innerEnd: own(-1) } })).toThrowError(
      expect.objectContaining({ faults: [expect.objectContaining({ code: 'inconsistent', path: 'vent.length' })] }),
    );
  });

  it('refuses fields that contradict each other, all at once', () => {
    const impossibleVent = {
      ...vent,
      wall: '5 mm',
      innerFlangeDiameter: '80 mm',
      bend: { angle: '90 deg', centreLineRadius: '20 mm' },
    } as const;
    expect(() => effectiveLength({ vent: impossibleVent })).toThrowError(
      expect.objectContaining({
        faults: [
          expect.objectContaining({ code: 'inconsistent', path: 'vent.innerFlangeDiameter' }),
          expect.objectContaining({ code: 'inconsistent', path: 'vent.bend.centreLineRadius' }),
        ],
      }),
    );
    const longBend = { ...vent, bend: { angle: '90 deg', centreLineRadius: '200 mm' } } as const;
    expect(() => effectiveLength({ vent: longBend })).toThrowError(
      expect.objectContaining({ faults: [expect.objectContaining({ code: 'inconsistent', path: 'vent.length' })] }),
    );
  });

  it('refuses a word where an end correction belongs', () => {
    // @ts-expect-error: an end correction is a function
    expect(() => effectiveLength({ vent: { ...vent, innerEnd: 'flanged' } })).toThrowError(
      expect.objectContaining({ faults: [expect.objectContaining({ code: 'unit', path: 'vent.innerEnd' })] }),
    );
  });
});
