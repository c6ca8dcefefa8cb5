/** A flare of one's own, by points as people write them. */
import { flareThrough } from '@airspring/workshop/solid';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';

test('points are texts or metres', () => {
  const flare = flareThrough([
    ['0 mm', '0 mm'],
    ['1 cm', '2 mm'],
    [0.02, 0.01],
  ]);
  expect([flare.depth, flare.widening, ...flare.curve(0.5)]).toEqual([0.02, 0.01, 0.01, 0.002]);
});

test('what is no length is told as it was written, at its place', () => {
  const faults = (points: unknown) =>
    faultsOf(() => flareThrough(points as never)).map(({ code, path, got }) => [code, path, got]);
  expect(
    faults([
      ['0 mm', '0 mm'],
      ['10 kg', '2 mm'],
    ]),
  ).toEqual([['unit', 'points[1][0]', '10 kg']]);
  expect(
    faults([
      [0, 0],
      [0.01, Number.NaN],
    ]),
  ).toEqual([['not-finite', 'points[1][1]', Number.NaN]]);
  expect(faults([[0, 0], [0.01]])).toEqual([['inconsistent', 'points[1]', [0.01]]]);
  expect(
    faults([
      [0, 0],
      [0.02, 0.01],
      [0.01, 0.02],
    ]),
  ).toEqual([['unsorted', 'points[2]', 0.01]]);
  expect(faults([[0, 0]])).toEqual([['empty', 'points', 1]]);
  expect(faults('0 mm')).toEqual([['empty', 'points', '0 mm']]);
});
