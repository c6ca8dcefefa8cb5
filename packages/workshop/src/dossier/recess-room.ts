import { NANOMETRE, si } from '@airspring/core/quantity';
import { framePlay } from '@airspring/core/space';
import { axisOf, facesOn, isFar } from '../panel/box-edges.js';
import { planeOf } from '../panel/plane.js';
import { boxShape, interiorOf } from '../shape/index.js';
import type { WorkHole } from './hole.js';
import { isInside } from './inside-boards.js';
import type { Says } from './says.js';
import type { WorkBox } from './work.js';

/** How wide a recess is for a frame, m. */
export const recessDiameter = (frame: number): number => frame + framePlay;

/** Nearer than this a solid stands behind a hole, m. */
const BEHIND = 1e-3;

type Standing = NonNullable<WorkBox['solids']>[number];

/** Whether a driver has room to move inwards from its face by a depth: a slanted panel may lie behind it. */
function hasRoom(
  { outer, thickness, prisms }: WorkBox,
  { least, greatest }: Standing,
  face: WorkHole['face'],
  depth: number,
) {
  const axis = axisOf(face);
  const edges = [outer.width, outer.height, outer.depth];
  const free = isFar(face) ? least[axis]! - thickness : edges[axis]! - thickness - greatest[axis]!;
  if (free < depth - NANOMETRE || prisms === undefined) return free >= depth - NANOMETRE;
  const shape = boxShape({
    along: prisms.along,
    outer: prisms.layers.map(({ outline, from, to, bent }) => ({
      outline: outline.map(([x, y]) => [si('length', x), si('length', y)] as const),
      length: si('length', to - from),
      ...(bent && { bent }),
    })),
    thickness: si('length', thickness),
  });
  if (!shape.ok) return true;
  const solid = {
    part: 'driver',
    form: 'cylinder',
    axis: (['x', 'y', 'z'] as const)[axis]!,
    least: least.map((at) => si('length', at + NANOMETRE)) as never,
    greatest: greatest.map((at) => si('length', at - NANOMETRE)) as never,
  } as const;
  return interiorOf(shape).way(solid, facesOn(axis)[isFar(face) ? 0 : 1]) >= depth - 3 * NANOMETRE;
}

/** What a driver would meet that stands deeper by its recess, in sentences. */
export function recessNotes(box: WorkBox, depth: number, says: Says): string[] {
  const { outer, thickness, solids = [] } = box;
  const edges = [outer.width, outer.height, outer.depth];
  const met = box.holes.flatMap((hole): string[] => {
    if (hole.what !== 'driver' || isInside(hole)) return [];
    const axis = axisOf(hole.face);
    const far = isFar(hole.face);
    const { axes } = planeOf(hole.face);
    const centre = [hole.across, hole.up];
    const driver = solids.find(
      ({ what, least, greatest }) =>
        what === 'driver' &&
        (far ? edges[axis]! - greatest[axis]! : least[axis]!) < thickness + BEHIND &&
        axes.every((k, i) => Math.abs((least[k]! + greatest[k]!) / 2 - centre[i]!) < BEHIND),
    );
    if (driver === undefined) return [];
    const end = far ? driver.least[axis]! - depth : driver.greatest[axis]! + depth;
    if (!hasRoom(box, driver, hole.face, depth)) return ['the panel behind it'];
    return solids.flatMap((other) => {
      if (other === driver || other.what === 'air') return [];
      const meets = [0, 1, 2].every((k) => {
        const [low, high] = [driver.least[k]!, driver.greatest[k]!];
        const [from, to] = k !== axis ? [low, high] : far ? [end, high] : [low, end];
        return other.least[k]! < to - NANOMETRE && other.greatest[k]! > from + NANOMETRE;
      });
      return meets ? [`the ${other.what ?? 'part'} inside`] : [];
    });
  });
  return [...new Set(met)].map(
    (what) =>
      `In a recess a driver stands ${says(depth)} deeper, and would meet ${what}. Make "recess" of the "workshop" less deep, or leave it out.`,
  );
}
