import { type ClosedBoxInput, closedFamily, systemOf } from '@airspring/core/enclosure';
import { respond } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { compiledOnce } from '../../../packages/airspring/src/standing/compiled-once.js';
import { driver } from '../../circuit/seam-cases.js';

test('boxes of the same parts are compiled once, and others by themselves; each answers as without', () => {
  let count = 0;
  const once = compiledOnce({
    ...closedFamily,
    compile: (topology) => {
      count++;
      return closedFamily.compile(topology);
    },
  });
  const boxes: readonly ClosedBoxInput[] = [
    { drivers: driver, netVolume: '20 L' },
    { drivers: driver, netVolume: '40 L' },
    { drivers: driver, netVolume: '40 L', QL: 7 },
  ];
  const levels = (family: typeof closedFamily) =>
    boxes.map((box) => respond(systemOf(family, box), [20, 50, 200]).levelHalfSpace);
  expect(levels(once)).toEqual(levels(closedFamily));
  expect(count).toBe(2);
});
