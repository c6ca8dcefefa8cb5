import type { Meeting } from '../drawing/index.js';
import { axisOf, isFar } from '../panel/box-edges.js';
import type { PanelBox, Piece } from '../panel/index.js';
import { inPlane, planeOf } from '../panel/plane.js';
import { insideBoards } from './inside-boards.js';
import type { WorkBox } from './work.js';

/** Nearer than this boards touch, m. */
const TOUCH = 1e-6;

/** Where boards inside are glued to a panel, as it is seen from outside: partitions, boards of a line or of a slot, and braces. */
export function meetingsOn(piece: Piece, { outer, pieces }: PanelBox, box: WorkBox): Meeting[] {
  const { face, place, thickness } = piece;
  if (face === undefined) return [];
  const edges = [outer.width, outer.height, outer.depth];
  const axis = axisOf(face);
  const surface = isFar(face) ? edges[axis]! - thickness : thickness;
  const plane = planeOf(face);
  const at = (corner: readonly number[]) =>
    inPlane(plane, place.least, place.greatest, [corner[plane.axes[0]]!, corner[plane.axes[1]]!]);
  const braces = pieces
    .filter((one) => one.face === undefined)
    .map(({ name, place: { least, greatest } }) => ({ name, least, greatest }));
  return [...insideBoards(box), ...(box.placed ?? []), ...braces].flatMap(({ name, least, greatest }): Meeting[] => {
    if (Math.abs((isFar(face) ? greatest : least)[axis]! - surface) > TOUCH) return [];
    const [one, other] = [at(least), at(greatest)];
    const ends = ([0, 1] as const).map((k) => {
      const inner = [box.thickness, edges[plane.axes[k]]! - box.thickness];
      // An end at the panel beside it needs no length.
      return [least, greatest].flatMap((corner, i) =>
        inner.some((wall) => Math.abs(corner[plane.axes[k]]! - wall) < TOUCH) ? [] : [[one, other][i]![k]],
      );
    });
    return [
      {
        says: name,
        least: [Math.min(one[0], other[0]), Math.min(one[1], other[1])],
        greatest: [Math.max(one[0], other[0]), Math.max(one[1], other[1])],
        told: [ends[0]!, ends[1]!],
      },
    ];
  });
}
