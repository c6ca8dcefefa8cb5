import { framePlay } from '@airspring/core/space';
import type { DriverChoice } from '../job/job.js';
import type { ReadBrief } from './schema.js';

/** Board that is left beside a recess and beneath one, m (common practice). */
const LEFT = 2e-3;

/**
 * What a recess for the frames of drivers asks for. It stays clear of a panel that a rabbet or the recess itself leaves too thin there,
 * of the bevel of a mitre, and of panels that cover the edges of its own.
 */
export function recessOf(
  { workshop: { recess, joint = {} } = {}, space: { panelThickness, shape } }: Pick<ReadBrief, 'workshop' | 'space'>,
  { faces }: DriverChoice['seating'],
): DriverChoice['recess'] {
  if (recess === undefined) return undefined;
  const thin = recess + (joint.rabbet?.depth ?? 0) > panelThickness - LEFT;
  const covered = joint.mitre === undefined && faces.some((face) => face !== 'front' && face !== 'back');
  const beside = covered || thin || shape !== undefined ? panelThickness : joint.mitre ? recess : 0;
  return { depth: recess, edgeMargin: beside + framePlay / 2 + LEFT };
}
