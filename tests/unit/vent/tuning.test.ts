import { pistonInFlange } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { type Tuning, type TuningInput, tuning } from '@airspring/core/vent';
import { describe, expect, it } from 'vitest';

const vent = { diameter: '75 mm', length: '150 mm' } as const;

function found(input: TuningInput): Tuning {
  const result = tuning(input);
  if (!result.ok) throw new Error(JSON.stringify(result.because));
  return result;
}

describe('tuning', () => {
  it('gives the number of its example', () => {
    expect(found({ vent, netVolume: '40 L' }).fb).toBeCloseTo(40.3, 1);
  });

  it('takes the tube, without the part in the panel, out of the volume before the vent', () => {
    const result = found({ vent: { ...vent, wall: '5 mm' }, volumeBeforeVent: '40 L', panelThickness: '18 mm' });
    const taken = Math.PI * 0.0425 ** 2 * 0.132;
    expect(result.netVolume).toBeCloseTo(0.04 - taken, 12);
    expect(result.volumeBeforeVent).toBeCloseTo(0.04, 12);
    expect(found({ vent: { ...vent, wall: '5 mm' }, netVolume: result.netVolume }).fb).toBeCloseTo(result.fb, 10);
  });

  it('counts several vents as one of their joint cross-section, with the ends of each', () => {
    const two = found({ vent: { ...vent, count: 2 }, netVolume: '80 L' });
    expect(two.fb).toBeCloseTo(found({ vent, netVolume: '40 L' }).fb, 10);
  });

  it('answers with the mass and length at fb', () => {
    const { fb, acousticMass, effectiveLength } = found({ vent, netVolume: '40 L' });
    expect(acousticMass / effectiveLength).toBeCloseTo(1.2 / (Math.PI * 0.0375 ** 2), -1);
    expect(fb).toBeGreaterThan(0);
  });

  it('says why when the vent fills the box', () => {
    const result = tuning({ vent: { diameter: '20 cm', length: '1 m' }, volumeBeforeVent: '30 L' });
    expect(result).toEqual({
      ok: false,
      because: [{ code: 'vent-fills-box', text: expect.stringContaining('31.4 L') }],
    });
  });

  it('warns of a tight bend, of a wide end, of a large box', () => {
    const bent = { ...vent, bend: { angle: '90 deg', centreLineRadius: '75 mm' } } as const;
    expect(found({ vent: bent, netVolume: '40 L' }).warnings).toEqual([
      expect.objectContaining({ code: 'outside-validity', path: 'vent.bend.centreLineRadius' }),
    ]);
    const wide = { diameter: '30 cm', length: '5 cm', outerEnd: pistonInFlange } as const;
    const paths = found({ vent: wide, netVolume: '100 L' }).warnings.map(({ path }) => path);
    expect(paths).toEqual(['k·volume^(1/3)', 'vent.outerEnd']);
  });

  it('refuses no volume, two volumes, and a vent shorter than its panel', () => {
    const refusal = (code: string, path: string) =>
      expect.objectContaining({ faults: [expect.objectContaining({ code, path })] });
    expect(() => tuning({ vent })).toThrowError(refusal('empty', 'netVolume'));
    const both = { vent, netVolume: '40 L', volumeBeforeVent: '41 L' } as const;
    expect(() => tuning(both)).toThrowError(refusal('conflict', 'netVolume'));
    const short = { vent, netVolume: '40 L', panelThickness: '200 mm' } as const;
    expect(() => tuning(short)).toThrowError(refusal('inconsistent', 'vent.length'));
    const nan = { vent, netVolume: si('volume', Number.NaN) };
    expect(() => tuning(nan)).toThrowError(refusal('not-finite', 'netVolume'));
  });
});
