import type { Fault } from '@airspring/core/fault';
import { type Face, faces } from '@airspring/core/space';
import * as v from 'valibot';
import type { Seating } from '../job/job.js';
import { most } from './bounds.js';

const opt = v.exactOptional;
const spreads = ['one-face', 'each-face', 'opposed'] as const;

/** Where drivers or passive radiators may stand. */
export const seatingFields = {
  faces: opt(
    v.pipe(
      v.array(v.picklist(faces)),
      v.minLength(1, 'empty\na face\nName one.'),
      most(),
      v.description('where they may stand; default the front'),
    ),
  ),
  spread: opt(
    v.pipe(
      v.picklist(spreads),
      v.description(
        'all in a block on one face (the default), equally many on each face, or opposed: back to back on two opposite faces',
      ),
    ),
  ),
};

const opposites: readonly (readonly [Face, Face])[] = [
  ['left', 'right'],
  ['bottom', 'top'],
  ['front', 'back'],
];

/** What a brief says of it, with defaults; faces in an order of our own, since that of the brief must not decide. */
export const seatingOf = (written: {
  readonly faces?: readonly Face[] | undefined;
  readonly spread?: Seating['spread'] | undefined;
}): Seating => ({
  faces: faces.filter((face) => (written.faces ?? ['front']).includes(face)),
  spread: written.spread ?? 'one-face',
});

/** Opposed ones want two opposite faces; told once, whatever their number. */
export function faultsOfFaces({ faces: own, spread }: Seating, path: string): Fault[] {
  if (spread !== 'opposed' || opposites.some((pair) => pair.every((face) => own.includes(face)))) return [];
  return [
    {
      code: 'inconsistent',
      path: `${path}.faces`,
      got: own.join(', '),
      expected: 'two opposite faces, such as left and right, since spread is opposed',
      remedy: 'Name both faces of a pair.',
    },
  ];
}

/** So many cannot stand that way; `at` is where their number is written. */
export function faultsOfCount({ faces: own, spread }: Seating, count: number, at: string): Fault[] {
  const share = spread === 'opposed' ? 2 : spread === 'each-face' ? own.length : 1;
  // Half a driver is another fault, told elsewhere.
  if (count % share === 0 || !Number.isInteger(count)) return [];
  return [
    {
      code: 'inconsistent',
      path: at,
      got: `${count} side by side`,
      expected: `a multiple of ${share}, since spread is ${spread}`,
      remedy: 'Change their number, their faces, or spread.',
    },
  ];
}
