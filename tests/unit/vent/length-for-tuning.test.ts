import { si } from '@airspring/core/quantity';
import { compileLengthForTuning, lengthForTuning, tuning } from '@airspring/core/vent';
import { describe, expect, it } from 'vitest';

const vent = { diameter: '75 mm' } as const;

/** The one reason, with the numbers of its text. */
function reason(input: Parameters<typeof lengthForTuning>[0]): { code: string; numbers: number[] } {
  const result = lengthForTuning(input);
  if (result.ok) throw new Error(`length ${result.length}`);
  const { code, text } = result.because[0]!;
  return { code, numbers: (text.match(/\d+(\.\d+)?/g) ?? []).map(Number) };
}

describe('length for tuning', () => {
  it('gives the number of its examples', () => {
    expect(lengthForTuning({ vent, netVolume: '40 L', fb: '40 Hz' })).toMatchObject({
      ok: true,
      length: expect.closeTo(0.1531, 4),
    });
    expect(compileLengthForTuning({ diameter: '75 mm' })(0.04, 40)).toBeCloseTo(0.1531, 4);
  });

  it('says how high a tuning can be, and that is what the shortest vent gives', () => {
    const { code, numbers } = reason({ vent, netVolume: '40 L', fb: '100 Hz', panelThickness: '18 mm' });
    expect(code).toBe('tuning-too-high');
    const shortest = tuning({ vent: { ...vent, length: '18 mm' }, netVolume: '40 L' });
    expect(numbers[0]).toBeCloseTo(shortest.ok ? shortest.fb : Number.NaN, 1);
    expect(reason({ vent, netVolume: '40 L', fb: '100 Hz' }).code).toBe('tuning-too-high');
  });

  it('says how low a tuning can be, and no other length tunes lower', () => {
    const box = { volumeBeforeVent: '40 L', panelThickness: '18 mm' } as const;
    const section = { diameter: '100 mm', wall: '4 mm' } as const;
    const { code, numbers } = reason({ vent: section, ...box, fb: '10 Hz' });
    expect(code).toBe('tuning-too-low');
    const [lowest = Number.NaN, longest = Number.NaN] = numbers;
    const at = (length: number) => {
      const result = tuning({ vent: { ...section, length: si('length', length) }, ...box });
      return result.ok ? result.fb : Number.POSITIVE_INFINITY;
    };
    expect(at(longest)).toBeCloseTo(lowest, 1);
    expect(at(longest * 0.9)).toBeGreaterThan(lowest);
    expect(at(longest * 1.1)).toBeGreaterThan(lowest);
    expect(lengthForTuning({ vent: section, ...box, fb: si('frequency', lowest * 1.01) }).ok).toBe(true);
  });

  it('says when a bend takes more than the whole vent, and when the tubes fill the box', () => {
    const bent = { ...vent, bend: { angle: '180 deg', centreLineRadius: '112.5 mm' } } as const;
    expect(reason({ vent: bent, netVolume: '40 L', fb: '40 Hz' }).code).toBe('bend-too-long');
    expect(reason({ vent: { diameter: '1 m' }, volumeBeforeVent: '40 L', fb: '40 Hz' }).code).toBe('vent-fills-box');
  });

  it('refuses with every fault at once', () => {
    expect(() => lengthForTuning({ vent: { diameter: '0 mm', count: 0.5 }, fb: '-1 Hz' })).toThrowError(
      expect.objectContaining({
        faults: [
          expect.objectContaining({ code: 'not-positive', path: 'fb' }),
          expect.objectContaining({ code: 'not-positive', path: 'vent.diameter' }),
          expect.objectContaining({ code: 'out-of-range', path: 'vent.count' }),
        ],
      }),
    );
    expect(() => compileLengthForTuning({ diameter: '0 mm' })).toThrowError(
      expect.objectContaining({ faults: [expect.objectContaining({ path: 'vent.diameter' })] }),
    );
  });
});
