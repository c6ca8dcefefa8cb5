import { tubeMass } from '@airspring/core/duct';
import { expect, it } from 'vitest';

it('gives the number of its example', () => {
  expect(tubeMass({ diameter: '50 mm', length: '150 mm' })).toBeCloseTo(91.6, 1);
});

it('refuses with every fault at its path', () => {
  expect(() => tubeMass({ diameter: '-5 mm', length: '1e9 m' })).toThrowError(
    expect.objectContaining({
      faults: [
        expect.objectContaining({ code: 'not-positive', path: 'tube.diameter' }),
        expect.objectContaining({ code: 'out-of-range', path: 'tube.length' }),
      ],
    }),
  );
});
