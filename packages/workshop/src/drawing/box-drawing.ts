import type { Face } from '@airspring/core/space';
import { axisOf } from '../panel/box-edges.js';
import { type Cutout, type Form, halvesOf } from '../panel/cutout.js';
import type { PanelBox, Piece } from '../panel/index.js';
import { facesAround, inPlane, type Plane, planeAcross, planeOf } from '../panel/plane.js';
import { type At, type Dimension, type Drawing, type Label, millimetres as mm, moved, type Purpose, rectangle, type Shape } from './drawing.js';
import { cutoutShapes } from './piece-drawing.js';

/** A view of the box, its lower left corner, and the face that is seen. */
interface View {
  readonly face: Face;
  readonly name: string;
  readonly plane: Plane;
  readonly corner: At;
}

/** Front, right side beside it, top above it, as joiners draw. */
function viewsOf({ outer: { width, height, depth } }: PanelBox): readonly View[] {
  const gap = 0.18 * Math.max(width, height, depth);
  return [
    { face: 'front', name: 'front', plane: planeOf('front'), corner: [0, 0] },
    { face: 'right', name: 'right side', plane: planeOf('right'), corner: [width + gap, 0] },
    { face: 'top', name: 'top', plane: planeOf('top'), corner: [0, height + gap] },
  ];
}

const edgesOf = ({ outer: { width, height, depth } }: PanelBox): readonly [number, number, number] => [width, height, depth];

/** The outline of a board in a view. */
function boardShape(box: PanelBox, view: View, piece: Piece, purpose: Purpose): Shape {
  const [a, b] = [piece.place.least, piece.place.greatest].map((corner) =>
    inPlane(view.plane, [0, 0, 0], edgesOf(box), [corner[view.plane.axes[0]]!, corner[view.plane.axes[1]]!]),
  ) as [At, At];
  const at: At = [Math.min(a[0], b[0]) + view.corner[0], Math.min(a[1], b[1]) + view.corner[1]];
  return rectangle(purpose, at, Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1]));
}
