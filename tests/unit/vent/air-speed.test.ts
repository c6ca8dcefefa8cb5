import { si } from '@airspring/core/quantity';
import { airSpeedCustoms, airSpeedPeak, airSpeedRms } from '@airspring/core/vent';
import { expect, it } from 'vitest';

it('gives the numbers of its examples', () => {
  expect(airSpeedPeak({ diameter: '75 mm', flowPeak: '60 L/s' })).toBeCloseTo(13.6, 1);
  expect(airSpeedRms({ diameter: '75 mm', flowRms: '60 L/s' })).toBeCloseTo(13.6, 1);
});

it('shares the flow among several vents; still air has no speed', () => {
  const one = airSpeedPeak({ diameter: '75 mm', flowPeak: '60 L/s' });
  expect(airSpeedPeak({ diameter: '75 mm', count: 3, flowPeak: '60 L/s' })).toBeCloseTo(one / 3, 12);
  expect(airSpeedRms({ diameter: '75 mm', flowRms: si('volumeFlow', 0) })).toBe(0);
});

it('names each customary limit as common practice', () => {
  for (const { words } of Object.values(airSpeedCustoms)) expect(words).toMatch(/^common practice/);
});

it('refuses with every fault at its path', () => {
  expect(() => airSpeedPeak({ diameter: '0 mm', flowPeak: '-1 L/s' })).toThrowError(
    expect.objectContaining({
      faults: [
        expect.objectContaining({ code: 'not-positive', path: 'flow.diameter' }),
        expect.objectContaining({ code: 'not-positive', path: 'flow.flowPeak' }),
      ],
    }),
  );
});
