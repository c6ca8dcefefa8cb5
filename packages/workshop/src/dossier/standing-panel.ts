import { si } from '@airspring/core/quantity';
import type { Face } from '@airspring/core/space';
import { type Drawing, pieceDrawing } from '../drawing/index.js';
import { mdf, type Piece } from '../panel/index.js';
import { bySide, pieceOf, pointAt } from '../panel/piece.js';
import { facesAround, inPlane, planeOf } from '../panel/plane.js';
import type { WorkChange } from './change.js';
import { elbowsBehind } from './elbow-mark.js';
import type { WorkHole } from './hole.js';

const metres = (value: number) => si('length', value);

/** A panel of a box that stands, as wide and high as the box, with its holes. Its board is not known. */
function standingPiece(
  { outer, holes }: NonNullable<WorkChange['standing']>,
  face: Face,
  panelThickness: number,
): Piece {
  const plane = planeOf(face);
  const around = facesAround(plane);
  const edges = [outer.width, outer.height, outer.depth];
  const [width, height] = plane.axes.map((axis) => metres(edges[axis]!)) as [Piece['width'], Piece['height']];
  const cutoutOf = (hole: WorkHole): Piece['cutouts'][number] => {
    const at = inPlane(plane, [0, 0, 0], edges, [hole.across, hole.up]);
    const opening =
      hole.form === 'circle'
        ? { diameter: metres(hole.diameter) }
        : { width: metres(hole.sides[0]), height: metres(hole.sides[1]), cornerRadius: metres(0) };
    const cover = hole.frame === undefined ? {} : { cover: metres(hole.frame) };
    return { part: hole.what, across: metres(at[0]), up: metres(at[1]), opening, ...cover };
  };
  return pieceOf({
    name: face,
    face,
    width,
    height,
    thickness: metres(panelThickness),
    board: mdf,
    edges: bySide((side) => ({ meets: around[side], covers: false, visible: false, cuts: [] })),
    cutouts: holes.filter((hole) => hole.face === face && hole.board === undefined).map(cutoutOf),
    place: { least: pointAt(0, 0, 0), greatest: pointAt(outer.width, outer.height, outer.depth) },
  });
}

/** The panels behind which a new tube bends, each with an arrow where its arm points to. */
export function bentPanels({ standing, tubes, panelThickness }: WorkChange): { face: Face; drawing: Drawing }[] {
  if (standing === undefined) return [];
  const faces = new Set(tubes.flatMap(({ bend }) => (bend ? [bend.from] : [])));
  return [...faces].map((face) => ({
    face,
    drawing: pieceDrawing(standingPiece(standing, face, panelThickness), {
      pointing: elbowsBehind({ face }, { vents: tubes }),
      standing: true,
    }),
  }));
}
