import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { costByPoints } from '../../../packages/airspring/src/search/cost.js';
import { explore } from '../../../packages/airspring/src/search/explore.js';
import { roomsOf } from '../../../packages/airspring/src/search/room.js';
import { points } from '../../../packages/airspring/src/search/wishes.js';
import { demo } from '../../arbitrary/brief.js';

const job = readBrief({ ...demo, drivers: [{ ...demo.drivers[0]!, wirings: [{}, { parallel: 2 }] }] });

test('searches that share their rooms find what each finds alone', () => {
  const rooms = roomsOf(job);
  for (const [lowest, step] of [
    [30, 2],
    [30, 1],
    [41, 2],
  ] as const) {
    const other = { ...job, wanted: { ...job.wanted, lowest } };
    const cost = costByPoints((criteria) => points(other, other.weights, criteria));
    const reach = { volume: 2, diameter: 1.3, step };
    const [alone] = explore(other, [cost], reach);
    expect(alone).toBeDefined();
    expect(explore(other, [cost], reach, undefined, rooms)).toEqual([alone]);
  }
});

test('every cell that is visited is a box that stands: its excesses are numbers', () => {
  let visited = 0;
  explore(job, [], { volume: 5, diameter: 1.6, step: 3 }, (excess) => {
    visited++;
    if (!excess.every(Number.isFinite)) throw new Error(`${excess}`);
  });
  expect(visited).toBeGreaterThan(1000);
});
