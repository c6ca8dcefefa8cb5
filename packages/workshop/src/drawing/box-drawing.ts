import { NANOMETRE } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import { axisOf, isFar } from '../panel/box-edges.js';
import { acrossAxis } from '../panel/brace-pieces.js';
import type { PanelBox, Piece } from '../panel/index.js';
import { inPlane, planeOf } from '../panel/plane.js';
import { told, UNIT, UNITS } from '../words/told.js';
import { cutoutShapes } from './cutout-drawing.js';
import {
  type At,
  type Dimension,
  type Drawing,
  type Label,
  moved,
  type Purpose,
  rectangle,
  type Shape,
} from './drawing.js';

/** A view of the box: the face that is seen, and where its lower left corner is in the drawing. */
interface View {
  readonly face: Face;
  readonly corner: At;
}

const edgesOf = ({ outer: { width, height, depth } }: PanelBox) => [width, height, depth] as const;

/** Front, right side beside it, top above it, as joiners draw. */
function viewsOf(box: PanelBox): readonly View[] {
  const [width, height, depth] = edgesOf(box);
  const gap = 0.2 * Math.max(width, height, depth);
  return [
    { face: 'front', corner: [0, 0] },
    { face: 'right', corner: [width + gap, 0] },
    { face: 'top', corner: [0, height + gap] },
  ];
}

const lowerLeft = (
  box: PanelBox,
  { face, corner }: View,
  { place }: { readonly place: Cuboid },
): { at: At; size: At } => {
  const { axes } = planeOf(face);
  const [one, other] = [place.least, place.greatest].map((at) =>
    inPlane(planeOf(face), [0, 0, 0], edgesOf(box), [at[axes[0]]!, at[axes[1]]!]),
  ) as [At, At];
  return { at: [one[0] + corner[0], one[1] + corner[1]], size: [other[0] - one[0], other[1] - one[1]] };
};

/** Whether a board reaches the outer side of a face, so that it is seen there. */
const isSeen = (box: PanelBox, face: Face, { place }: Piece): boolean => {
  const axis = axisOf(face);
  const away = isFar(face) ? edgesOf(box)[axis]! - place.greatest[axis]! : place.least[axis]!;
  return away < NANOMETRE;
};

/** A cuboid in the box, from its left, bottom, front outer edge. */
interface Cuboid {
  readonly least: readonly number[];
  readonly greatest: readonly number[];
}

function viewShapes(box: PanelBox, view: View, inside: readonly Cuboid[]): Shape[] {
  const shown = (piece: Piece, purpose: Purpose) => {
    const { at, size } = lowerLeft(box, view, piece);
    return rectangle(purpose, at, ...size);
  };
  const own = box.pieces.find(({ name }) => name === view.face) as Piece;
  const hidden = box.pieces.filter((piece) => !isSeen(box, view.face, piece) && piece !== own);
  const seen = box.pieces.filter((piece) => isSeen(box, view.face, piece) || piece === own);
  return [
    ...inside.map((place) => {
      const { at, size } = lowerLeft(box, view, { place });
      return rectangle('note', at, ...size, 'tint');
    }),
    ...hidden.map((piece) => shown(piece, 'inside')),
    ...hidden
      .filter((piece) => piece.face === undefined && acrossAxis(piece) === axisOf(view.face))
      .flatMap((piece) => windowShapes(box, view, piece)),
    ...seen.map((piece) => shown(piece, 'cut')),
    ...own.cutouts.flatMap(cutoutShapes).map((shape) => moved(shape, lowerLeft(box, view, own).at)),
  ];
}

/** The openings of a board inside, as they are seen through a face; a brace is seen from the front, the right or above as well. */
const windowShapes = (box: PanelBox, view: View, piece: Piece): Shape[] =>
  piece.cutouts
    .flatMap(({ opening, ...cutout }) => (opening ? cutoutShapes({ ...cutout, opening }) : []))
    .map((shape) => ({ ...moved(shape, lowerLeft(box, view, piece).at), purpose: 'inside' as const }));

/** Where the middles of braces are, counted from the lower left corner of a view. */
const braceDimensions = (box: PanelBox, [front, right]: readonly View[]): Dimension[] =>
  [0, 1, 2].flatMap((axis): Dimension[] => {
    const across = box.pieces.filter((piece) => piece.face === undefined && acrossAxis(piece) === axis);
    if (across.length === 0) return [];
    const from = axis === 2 ? right!.corner[0] : 0;
    const middles = across.map(({ place }) => from + (place.least[axis]! + place.greatest[axis]!) / 2);
    return [
      {
        kind: 'running',
        along: axis === 1 ? 'y' : 'x',
        ends: [from, ...middles.sort((a, b) => a - b)],
        beside: axis === 1 ? front!.corner[0] : 0,
        side: axis === 1 ? 'left' : 'below',
        row: 0,
      },
    ];
  });

/** What a view is called, above it. */
const viewLabel = (box: PanelBox, { face, corner }: View): Label => {
  const edges = edgesOf(box);
  const [across, up] = planeOf(face).axes;
  return { at: [corner[0] + edges[across]! / 2, corner[1] + edges[up]!], text: face, size: 'normal', above: true };
};

/**
 * The drawing of a box from three sides: the front, the right side beside it and the top above it, with what is hidden in dashes. `inside` are the
 * cuboids around what else stands in it, which are shaded.
 *
 * @example toSvg(boxDrawing(panelBox(box)))
 */
export function boxDrawing(
  box: PanelBox,
  { inside = [] }: { readonly inside?: readonly Cuboid[] | undefined } = {},
): Drawing {
  const [width, height, depth] = edgesOf(box);
  const views = viewsOf(box);
  const [, right, top] = views as [View, View, View];
  const braces = braceDimensions(box, views);
  const overall = (along: 'x' | 'y', from: number, length: number, beside: number): Dimension => ({
    kind: 'overall',
    along,
    ends: [from, from + length],
    beside,
    side: along === 'x' ? 'below' : 'left',
    row: braces.some((one) => one.along === along && one.ends[0] === from) ? 1 : 0,
  });
  const { inner } = box;
  const panels = box.pieces.filter(({ name }) => faces.includes(name as Face)).length;
  return {
    title: told`Box: ${width} × ${height} × ${depth} ${UNIT} outside`,
    subtitle: told`inside ${inner.width} × ${inner.height} × ${inner.depth}; front, right side and top; lengths in ${UNITS}`,
    description: told`A box ${width} ${UNIT} wide, ${height} ${UNIT} high and ${depth} ${UNIT} deep of ${String(panels)} panels and ${String(box.pieces.length - panels)} boards inside, from the front, the right and above.`,
    shapes: views.flatMap((view) => viewShapes(box, view, inside)),
    dimensions: [
      ...braces,
      overall('x', 0, width, 0),
      overall('y', 0, height, 0),
      overall('x', right.corner[0], depth, 0),
      overall('y', top.corner[1], depth, 0),
    ],
    labels: views.map((view) => viewLabel(box, view)),
    callouts: [],
  };
}
