import type { Face, Fit } from '@airspring/core/space';
import type { ReadWorkshop } from '../brief/workshop.js';
import type { Job } from '../job/job.js';
import { type Hole, holeAt, type Panel } from '../kind/build-record.js';

/** Another joint than butt joints, which a brief may ask for. */
export interface JointTold {
  readonly name: 'rabbet' | 'mitre';
  /** How far the edge of a covered panel stands back from the outer surface of the one that covers it, m. */
  readonly setback: number;
}

/** The joint that a brief asks for; `undefined` for butt joints. */
export function jointOf({ sections, space }: Pick<Job, 'sections' | 'space'>): JointTold | undefined {
  const { joint } = (sections.workshop ?? {}) as Pick<ReadWorkshop, 'joint'>;
  // The panels of a box that is no cuboid meet in mitres of their own, and the design says so.
  if (space.shape !== undefined || joint === undefined || joint.butt) return undefined;
  const { rabbet } = joint;
  return rabbet ? { name: 'rabbet', setback: space.panelThickness - rabbet.depth } : { name: 'mitre', setback: 0 };
}

/** The joint that a brief asks for and that a box does not have since it is no cuboid. */
export function jointLeftOut({ sections }: Pick<Job, 'sections'>): 'butt' | 'rabbet' | 'mitre' | undefined {
  const { joint } = (sections.workshop ?? {}) as Pick<ReadWorkshop, 'joint'>;
  return (['butt', 'rabbet', 'mitre'] as const).find((name) => joint?.[name] !== undefined);
}

/**
 * The six panels: front and back cover the whole box, top and bottom its width, the sides stand between. A covered panel stands back by
 * the thickness of the other in a butt joint. A box without a back has nothing behind its sides, which reach to its end.
 */
export function panelsOf(
  [width, height, depth]: readonly [number, number, number],
  setback: number,
  open: readonly Face[] = [],
): Panel[] {
  const hasBack = !open.includes('back');
  const [within, between] = [height - 2 * setback, depth - (hasBack ? 2 : 1) * setback];
  return [
    hasBack
      ? { name: 'front and back (width × height)', count: 2, length: width, width: height }
      : { name: 'front (width × height)', count: 1, length: width, width: height },
    { name: 'top and bottom (width × depth)', count: 2, length: width, width: between },
    { name: 'sides (height × depth)', count: 2, length: within, width: between },
  ];
}

/** The holes for the drivers, where the drivers were placed. */
export const driverHoles = ({ placement: { drivers } }: Fit, cutout: number): Hole[] =>
  drivers.flatMap(({ face, centres }) => centres.map((centre) => holeAt('driver', face, cutout, centre)));
