import { axisOf, isFar } from '../panel/box-edges.js';
import { boltsOf, type Form, halvesOf } from '../panel/cutout.js';
import type { PanelBox, Piece } from '../panel/index.js';
import { planeAcross, planeOf } from '../panel/plane.js';
import { type At, type Drawing, type Label, polygon, type Shape } from './drawing.js';

type Place = readonly [number, number, number];

const [COS, SIN] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];

/** A place as it is seen from the front, from the right and from above, all three axes equally short. */
const seen = ([x, y, z]: Place): At => [(x + z) * COS, y + (z - x) * SIN];

/** How far each panel is moved outwards, over the mean edge of the box. */
const APART = 0.42;

/** A board as a cuboid, moved to where it is drawn. */
interface Board {
  readonly piece: Piece;
  readonly least: Place;
  readonly greatest: Place;
}

function boardsOf(box: PanelBox): Board[] {
  const { width, height, depth } = box.outer;
  const far = (APART * (width + height + depth)) / 3;
  return box.pieces.map((piece) => {
    const move = [0, 0, 0];
    if (piece.face) {
      const part = piece.name === piece.face ? 1 : 0.6;
      move[axisOf(piece.face)] = isFar(piece.face) ? far * part : -far * part;
    }
    const moved = (at: readonly number[]) => at.map((one, k) => one + move[k]!) as unknown as Place;
    return { piece, least: moved(piece.place.least), greatest: moved(piece.place.greatest) };
  });
}

/** Whether the first board must be drawn before the second, since it can only be behind it. */
const isBehind = (one: Board, other: Board): boolean =>
  one.greatest[0] <= other.least[0] + 1e-9 ||
  one.greatest[1] <= other.least[1] + 1e-9 ||
  one.least[2] >= other.greatest[2] - 1e-9;

/** The boards from the farthest to the nearest: each time one that no other left is certainly behind. */
function fromBehind(boards: readonly Board[]): Board[] {
  const left = [...boards];
  const sorted: Board[] = [];
  while (left.length > 0) {
    const free = left.findIndex((one) =>
      left.every((other) => other === one || !isBehind(other, one) || isBehind(one, other)),
    );
    sorted.push(...left.splice(Math.max(0, free), 1));
  }
  return sorted;
}

/** Points around a form. */
function around(form: Form): readonly At[] {
  const [a, b] = halvesOf(form);
  const radius = 'diameter' in form ? a : form.cornerRadius;
  const points: At[] = [];
  const steps = 12;
  for (const [sx, sy, start] of [
    [1, 1, 0],
    [-1, 1, 1],
    [-1, -1, 2],
    [1, -1, 3],
  ] as const) {
    for (let i = 0; i <= (radius > 0 ? steps : 0); i++) {
      const angle = ((start + i / steps) * Math.PI) / 2;
      points.push([sx * (a - radius) + radius * Math.cos(angle), sy * (b - radius) + radius * Math.sin(angle)]);
    }
  }
  return points;
}

/** The three sides of a board that are seen, and the openings in that side which is a panel's plane. */
function boardShapes({ piece, least, greatest }: Board): Shape[] {
  const [a, b, c] = least;
  const [x, y, z] = greatest;
  const side = (...corners: readonly Place[]) => polygon('note', corners.map(seen), 'solid');
  const shade = (...corners: readonly Place[]) => polygon('note', corners.map(seen), 'tint');
  const right: Place[] = [
    [x, b, c],
    [x, b, z],
    [x, y, z],
    [x, y, c],
  ];
  const top: Place[] = [
    [a, y, c],
    [x, y, c],
    [x, y, z],
    [a, y, z],
  ];
  const shapes = [side([a, b, c], [x, b, c], [x, y, c], [a, y, c]), side(...right), shade(...right), side(...top)];
  const axis = piece.face
    ? axisOf(piece.face)
    : [0, 1, 2].find((k) => Math.abs(greatest[k]! - least[k]! - piece.thickness) < 1e-9)!;
  const { axes, turned } = piece.face ? planeOf(piece.face) : planeAcross(axis);
  const level = axis === 2 ? least[2] : greatest[axis]!;
  const isOutside = piece.face === 'front' || piece.face === 'right' || piece.face === 'top';
  const onSide = (middle: At, form: Form, filled: 'solid' | 'tint'): Shape => {
    const points = around(form).map(([dx, dy]) => {
      const at: number[] = [];
      at[axis] = level;
      [dx + middle[0], dy + middle[1]].forEach((along, k) => {
        const one = axes[k]!;
        at[one] = turned[k] ? greatest[one]! - along : least[one]! + along;
      });
      return seen(at as unknown as Place);
    });
    return polygon('note', points, filled);
  };
  for (const { across, up, opening, recess, bolts } of piece.cutouts) {
    if (recess && isOutside) shapes.push(onSide([across, up], recess.form, 'solid'));
    if (opening) shapes.push(onSide([across, up], opening, 'solid'), onSide([across, up], opening, 'tint'));
    if (!bolts) continue;
    for (const [dx, dy] of boltsOf(bolts))
      shapes.push(onSide([across + dx, up + dy], { diameter: bolts.hole }, 'tint'));
  }
  return shapes;
}

const middleOf = ({ piece, least, greatest }: Board): Label => {
  const at: Place = [
    piece.face === 'right' ? greatest[0] : (least[0] + greatest[0]) / 2,
    piece.face === 'top' ? greatest[1] : (least[1] + greatest[1]) / 2,
    piece.face === 'front' ? least[2] : (least[2] + greatest[2]) / 2,
  ];
  return { at: seen(at), text: piece.name, size: 'normal', clear: true };
};

/**
 * The drawing of a box pulled apart: all boards with their openings, each panel moved outwards, seen from the front, the right and above.
 *
 * @example toSvg(explodedDrawing(panelBox(box)))
 */
export function explodedDrawing(box: PanelBox): Drawing {
  const boards = fromBehind(boardsOf(box));
  return {
    title: 'The boards, and where they go',
    subtitle: 'seen from the front, the right and above; not to be measured',
    description: `The ${boards.length} boards of the box, pulled apart: ${boards.map(({ piece }) => piece.name).join(', ')}.`,
    shapes: boards.flatMap(boardShapes),
    dimensions: [],
    labels: boards.map(middleOf),
    callouts: [],
  };
}
