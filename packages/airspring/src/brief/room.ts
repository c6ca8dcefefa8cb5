import type { Air } from '@airspring/core/air';
import type { Fault } from '@airspring/core/fault';
import * as v from 'valibot';
import { type Heard, heardOf } from '../job/heard.js';
import { audible, type edge } from './bounds.js';
import type { Faultless } from './faultless.js';
import type { Bounds } from './quantity-text.js';
import { quantity } from './quantity-text.js';

const opt = v.exactOptional;
const far: Bounds<'length'> = { least: 0.1, greatest: 1000, unit: 'm', example: '3 m' };
const wall: Bounds<'length'> = { least: 0, greatest: 100, unit: 'm', example: '300 mm' };
const across: typeof edge = { least: 0.5, greatest: 200, unit: 'm', example: '4 m' };

const size = v.strictObject({
  length: v.pipe(quantity('length', across), v.description('inner length of the room')),
  width: v.pipe(quantity('length', across), v.description('inner width of the room')),
  height: v.pipe(quantity('length', { ...across, example: '2.5 m' }), v.description('inner height of the room')),
});

const mains = v.strictObject({
  crossover: v.pipe(
    quantity('frequency', { ...audible, example: '80 Hz' }),
    v.description(
      'corner of the Linkwitz–Riley filters of fourth order, a low-pass for the box and a high-pass for them',
    ),
  ),
  distance: v.pipe(quantity('length', far), v.description('distance from the main speakers to the listener')),
  f3: v.pipe(
    quantity('frequency', { ...audible, example: '60 Hz' }),
    v.description('where the main speakers alone have fallen by 3 dB, as closed boxes of second order'),
  ),
});

/** What a brief may say about the place where the box is heard. */
export const roomFields = {
  distance: v.pipe(quantity('length', far), v.description('distance from the box to the listener')),
  walls: opt(
    v.pipe(
      v.array(quantity('length', wall, 'not-negative')),
      v.maxLength(
        3,
        'out-of-range\nat most three walls\nGive those that are nearest: a floor, a wall behind, a wall beside.',
      ),
      v.description(
        'distances from the drivers to the nearest floor and walls, at right angles to each other; 0 mm for one that they touch; [] in free air; default a floor that they touch (half space)',
      ),
      v.examples([['0 mm', '300 mm']] as never),
    ),
  ),
  size: opt(v.pipe(size, v.description('edges of the closed room; default in the open'))),
  volume: opt(
    v.pipe(
      quantity('volume', { least: 0.5, greatest: 1e6, unit: 'm³', example: '3 m³' }),
      v.description('air of a closed room or cabin, if its edges are not known'),
    ),
  ),
  leakCorner: opt(
    v.pipe(
      quantity('frequency', { least: 0.01, greatest: 200, unit: 'Hz', example: '4 Hz' }),
      v.description('below this frequency the room leaks its pressure; default no leak'),
    ),
  ),
  mains: opt(
    v.pipe(mains, v.description('main speakers that the box joins, added to it in a free field; default none')),
  ),
};

const schema = v.strictObject(roomFields);
type WrittenRoom = v.InferInput<typeof schema>;
type ReadRoom = v.InferOutput<typeof schema>;

/** Where wants may be stated. */
export const PLACES = ['1 m', 'listener'] as const;

/** What place, room and distance change, from the section `room`. */
export function roomHeard(room: ReadRoom, at: (typeof PLACES)[number], air: Air): Heard {
  const { volume, ...read } = room;
  const { size: edges } = read;
  const inside = edges ? edges.length * edges.width * edges.height : volume;
  const from = { ...read, walls: room.walls ?? [0], ...(inside !== undefined && { volume: inside }) };
  return heardOf(from, at === 'listener', air);
}

/** Faults between the fields of a room. */
export function faultsOfRoom(written: WrittenRoom, room: Faultless<ReadRoom>): Fault[] {
  const faults: Fault[] = [];
  const told = (code: Fault['code'], field: keyof WrittenRoom, expected: string, remedy: string) =>
    faults.push({ code, path: `room.${field}`, got: written[field], expected, remedy });
  if (written.size !== undefined && written.volume !== undefined) {
    told('conflict', 'volume', 'size or volume, not both', 'Remove one of the two.');
  }
  if (written.leakCorner !== undefined && written.size === undefined && written.volume === undefined) {
    told('inconsistent', 'leakCorner', 'a closed room: its size or its volume', 'Add one of them, or remove the leak.');
  }
  const { length = Infinity, width = Infinity, height = Infinity } = room.size ?? {};
  const most = Math.hypot(length, width, height);
  if (room.distance !== undefined && room.distance > most) {
    told(
      'inconsistent',
      'distance',
      `at most the longest way in the room, ${most.toFixed(2)} m`,
      'Correct one of the two.',
    );
  }
  return faults;
}
