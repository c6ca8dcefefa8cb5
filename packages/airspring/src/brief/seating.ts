import type { Fault } from '@airspring/core/fault';
import { type Face, faces } from '@airspring/core/space';
import * as v from 'valibot';
import type { Seating } from '../job/job.js';
import { oneOrMore } from './bounds.js';

const opt = v.exactOptional;
const spreads = ['one-face', 'each-face', 'opposed'] as const;

/** The fields that say where drivers or passive radiators may stand. */
export const seatingFields = {
  faces: opt(
    v.pipe(
      oneOrMore(v.picklist(faces), 'a face'),
      v.description('faces on which they may be mounted; default the front'),
    ),
  ),
  spread: opt(
    v.pipe(
      v.picklist(spreads),
      v.description(
        'one-face: all together on one face (the default); each-face: equally many on each face; opposed: back to back on two opposite faces',
      ),
    ),
  ),
};

const opposites: readonly (readonly [Face, Face])[] = [
  ['left', 'right'],
  ['bottom', 'top'],
  ['front', 'back'],
];

/** Where they may stand, with defaults. The faces are in a fixed order, so that their order in the brief does not decide. */
export const seatingOf = (written: {
  readonly faces?: readonly Face[] | undefined;
  readonly spread?: Seating['spread'] | undefined;
}): Seating => ({
  faces: faces.filter((face) => (written.faces ?? ['front']).includes(face)),
  spread: written.spread ?? 'one-face',
});

/** The fault of opposed drivers or radiators without two opposite faces. It does not depend on their number. */
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

/** The fault of a number that cannot be spread like this. `at` is the path of that number in the brief. */
export function faultsOfCount({ faces: own, spread }: Seating, count: number, at: string): Fault[] {
  const share = spread === 'opposed' ? 2 : spread === 'each-face' ? own.length : 1;
  // Half a driver is another fault, which is reported elsewhere.
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
