import { resonance } from '@airspring/core/duct';
import { expect, it } from 'vitest';

it('gives the number of its example', () => {
  expect(resonance({ volume: '30 L', area: '40 cm²', length: '12 cm' }).frequency).toBeCloseTo(57.71, 2);
});

it('warns when cavity or neck is not small against the wavelength', () => {
  expect(resonance({ volume: '30 L', area: '40 cm²', length: '12 cm' }).warnings).toEqual([]);
  const large = resonance({ volume: '100 L', area: '1000 cm²', length: '5 cm' });
  expect(large.warnings).toEqual([expect.objectContaining({ code: 'outside-validity', path: 'k·volume^(1/3)' })]);
  const long = resonance({ volume: '1 L', area: '50 cm²', length: '500 cm' });
  expect(long.warnings).toEqual([expect.objectContaining({ path: 'k·length' })]);
});

it('refuses with every fault at its path', () => {
  // @ts-expect-error: a unit of another kind
  expect(() => resonance({ volume: '30 mm', area: '0 cm²', length: '12 cm' })).toThrowError(
    expect.objectContaining({
      code: 'airspring-input',
      faults: [
        expect.objectContaining({ code: 'unit', path: 'resonator.volume' }),
        expect.objectContaining({ code: 'not-positive', path: 'resonator.area' }),
      ],
    }),
  );
});
