import { closedBox, lineVentedBox, ventedBox } from '@airspring/core/enclosure';
import { features } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { impedanceTold } from '../../../packages/airspring/src/record/impedance-told.js';
import { driver } from '../laws/boxes.js';

const hertz = (all: readonly { readonly frequency: number }[]) => all.map(({ frequency }) => frequency);

test('a peak that no measurement shows is not told, and neither is the dip beside it', () => {
  const vent = { diameter: '75 mm', length: '57 cm' } as const;
  const box = lineVentedBox({ drivers: driver, netVolume: '45 L', vent, QL: 7 });
  const { impedanceMaxima } = features(box, { from: '5 Hz', to: '500 Hz', reference: 'maximum' });
  const { maxima, minima } = impedanceTold(box, 120);
  expect(impedanceMaxima).toHaveLength(3);
  expect(hertz(maxima)).toEqual(hertz(impedanceMaxima).slice(0, 2));
  expect(hertz(minima).filter((f) => f > maxima[0]!.frequency && f < maxima[1]!.frequency)).toHaveLength(1);
});

test('peaks that a measurement shows stay', () => {
  const boxes = [
    closedBox({ drivers: driver, netVolume: '40 L' }),
    ventedBox({ drivers: driver, netVolume: '45 L', fb: '29 Hz', QL: 7 }),
  ];
  expect(boxes.map((box) => impedanceTold(box, 120).maxima.length)).toEqual([1, 2]);
});
