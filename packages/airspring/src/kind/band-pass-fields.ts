import type { Fault } from '@airspring/core/fault';
import type { Face } from '@airspring/core/space';
import * as v from 'valibot';
import { oneOrMore } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { quantity } from '../brief/quantity-text.js';
import type { Job } from '../job/job.js';
import type { Rear } from './finished-chambers.js';
import { type EdgeName, edgeNames } from './partition.js';
import { type RoundVentSettings, roundVentAcross, roundVentFields } from './round-vent-fields.js';

/** What a brief may say about a band-pass box: what it says about round vents, and how the partition divides the box. */
export const fields = {
  ...roundVentFields,
  partition: {
    across: v.exactOptional(
      v.pipe(
        oneOrMore(v.picklist(edgeNames), 'an edge'),
        v.description('edges that the partition may divide; each is tried; default every edge'),
      ),
    ),
    frontBracing: v.exactOptional(
      v.pipe(
        quantity('volume', { least: 0, greatest: 10_000, unit: 'L', example: '0.5 L' }, 'not-negative'),
        v.description(
          'volume of the bracing in the chamber in front of the cones, beside that of "space", which is behind them; default none',
        ),
      ),
    ),
  },
};

/** The face on which each chamber has no panel, where the partition divides an edge: the one in front of the cones first. */
const inside: Readonly<Record<EdgeName, readonly [front: Face, rear: Face]>> = {
  width: ['right', 'left'],
  height: ['top', 'bottom'],
  depth: ['back', 'front'],
};

/** Whether every chamber whose vents lead outside has a panel among these faces. */
const leavesFace = (edge: EdgeName, faces: readonly Face[], rear: Rear): boolean =>
  inside[edge].slice(0, rear === 'out' ? 2 : 1).every((closed) => faces.some((face) => face !== closed));

/** The edges that the partition may divide: that of the longest edge of the space first. */
export function partitionsOf({ space, sections }: Job, { faces }: RoundVentSettings, rear: Rear): readonly EdgeName[] {
  const { partition } = sections as ReadFields<typeof fields>;
  const possible = edgeNames.filter((edge) => leavesFace(edge, faces, rear));
  return possible.filter((edge) => partition?.across?.includes(edge) ?? true).sort((a, b) => space[b] - space[a]);
}

/** Faults between the fields: sizes of the vents, and vents that could open only through the partition. */
export const across =
  (name: string, rear: Rear) =>
  (written: Readonly<Record<string, unknown>>, read: Partial<Job['sections']>): Fault[] => {
    const bounds = roundVentAcross(written, read);
    const { box, vent, partition } = read as {
      box?: { kinds?: readonly string[] };
      vent?: { faces?: Face[] };
      partition?: { across?: EdgeName[] };
    };
    const edges = partition?.across;
    const faces = vent?.faces ?? ['front'];
    if (edges === undefined || !box?.kinds?.includes(name) || edges.some((edge) => leavesFace(edge, faces, rear)))
      return bounds;
    return [
      ...bounds,
      {
        code: 'inconsistent',
        path: 'partition.across',
        got: edges,
        expected: `an edge that leaves ${rear === 'out' ? 'both chambers' : 'the vented chamber'} a panel among ${faces.join(', ')}`,
        remedy: 'Name another edge, or another face in vent.faces.',
      },
    ];
  };
