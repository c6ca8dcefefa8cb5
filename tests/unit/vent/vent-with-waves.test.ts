import { flared } from '@airspring/core/duct';
import { lineVentedBox } from '@airspring/core/enclosure';
import { respond } from '@airspring/core/response';
import { compileLengthForTuning, compileVentWithWaves } from '@airspring/core/vent';
import { expect, test } from 'vitest';
import { driver } from '../laws/boxes.js';

test('a short vent is as long as one with a mass of air, a long one shorter, and none longer than a quarter of a wave', () => {
  const [waves, mass] = [compileVentWithWaves({ diameter: '50 mm' }), compileLengthForTuning({ diameter: '50 mm' })];
  expect(waves.length(0.06, 40)).toBeCloseTo(mass(0.06, 40), 4);
  const [long, longer] = [waves.length(0.01, 25), mass(0.01, 25)];
  expect(long).toBeLessThan(0.99 * longer);
  expect(compileVentWithWaves({ diameter: '300 mm' }).length(0.01, 25)).toBeLessThan(344 / 100);
});

test('no vent tunes so high: the length is below zero', () => {
  expect(compileVentWithWaves({ diameter: '50 mm' }).length(0.1, 90)).toBeLessThan(0);
});

test.each([
  ['two round tubes', { diameter: '70 mm', count: 2, wall: '3 mm' }],
  [
    'a tube with flares',
    { diameter: '80 mm', innerEnd: flared({ radius: '20 mm' }), outerEnd: flared({ radius: '15 mm' }) },
  ],
  ['a slot', { width: '300 mm', height: '20 mm' }],
] as const)('%s tunes a box as asked: the cone stands still there', (_, section) => {
  const { length, tube } = compileVentWithWaves(section as never);
  const vent = tube(length(0.04, 33));
  const box = lineVentedBox({ drivers: driver, netVolume: '40 L', vent: { ...vent, wallLoss: 0 } });
  const near = Array.from({ length: 201 }, (_, i) => 32 + 0.01 * i);
  const { displacementPeak } = respond(box, near);
  expect(near[displacementPeak.indexOf(Math.min(...displacementPeak))]).toBeCloseTo(33, 2);
});

test('a slot has more wall than a round tube of its area: by the perimeters', () => {
  const { tube } = compileVentWithWaves({ width: '300 mm', height: '20 mm' });
  expect(tube(0.2).wallLoss).toBeCloseTo((2 * 320) / (2 * Math.sqrt(Math.PI * 300 * 20)), 9);
});
