/** Edges of the room: a mode at the very end of a band, and a wall whose own function fails at one frequency. */
import { standardAir } from '@airspring/core/air';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { compileCorner, roomModes } from '@airspring/core/room';
import { expect, test } from 'vitest';
import { pathsOf } from '../../refusal/faults.js';

test('a mode at the end of the band is listed at any size of the room', () => {
  for (let i = 1; i < 500; i++) {
    const length = 2 + 0.00317 * i;
    const upTo = si('frequency', standardAir.speedOfSound / 2 / length);
    const [first] = roomModes({ length: si('length', length), width: '1.5 m', height: '1.4 m', upTo });
    expect(first?.order).toEqual([1, 0, 0]);
  }
});

test.each([Number.NaN, 1.5])('a reflection of %d at one frequency of the sweep is refused there', (wrong) => {
  const reflection = Object.assign((f: number) => (f === 30 ? wrong : 1), { sources: [] });
  const sweep = compileCorner({ walls: [{ distance: '1 m', reflection }], listener: ['1 m', '2 m', '1 m'] });
  const pressure = { re: new Float64Array(2).fill(1), im: new Float64Array(2) };
  expect(pathsOf(() => sweep(frequencyGrid([20, 40]), pressure))).toEqual([]);
  expect(pathsOf(() => sweep(frequencyGrid([30, 40]), pressure))).toEqual(['walls[0].reflection']);
});
