import { radiationLoad } from '@airspring/core/duct';
import { expect, it } from 'vitest';

it('gives the number of its example', () => {
  const load = radiationLoad({ diameter: '200 mm', frequency: '50 Hz' });
  expect(load.mass).toBeCloseTo(3.24, 2);
  expect(load.warnings).toEqual([]);
});

it('warns beyond ka = 0.3', () => {
  const { warnings } = radiationLoad({ diameter: '200 mm', frequency: '200 Hz' });
  expect(warnings).toEqual([expect.objectContaining({ code: 'outside-validity', path: 'ka' })]);
});

it('refuses with every fault at its path', () => {
  expect(() => radiationLoad({ diameter: '0 mm', frequency: '0 Hz' })).toThrowError(
    expect.objectContaining({
      faults: [
        expect.objectContaining({ code: 'not-positive', path: 'piston.diameter' }),
        expect.objectContaining({ code: 'not-positive', path: 'piston.frequency' }),
      ],
    }),
  );
});
