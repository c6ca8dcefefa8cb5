import type { Fault, Reason } from '@airspring/core/fault';
import { NANOMETRE, si } from '@airspring/core/quantity';
import { reasonOf, told } from '../words/told.js';
import { facesOn } from './box-edges.js';
import type { Cutout } from './cutout.js';
import type { BoxOfPanels } from './panel-box-input.js';
import { bySide, type Piece, type PieceEdge, pieceOf, pointAt, type Side } from './piece.js';
import { facesAround, inPlane, planeAcross } from './plane.js';
import { depthOf, wallOf } from './wall.js';

const axisOfBrace = ({ across }: { readonly across: string }) => ['width', 'height', 'depth'].indexOf(across);

/** The space between the walls along an axis. */
const between = (box: BoxOfPanels, axis: number): readonly [number, number] => {
  const [near, far] = facesOn(axis);
  return [depthOf(wallOf(box, near)), box.outer[axis]! - depthOf(wallOf(box, far))];
};

/** A form of one's own that gives no board. */
export function braceFaults(box: BoxOfPanels): Fault[] {
  return box.braces.flatMap(({ form, ...brace }, i) => {
    const { axes } = planeAcross(axisOfBrace(brace));
    const space = axes.map((axis) => between(box, axis)).map(([low, high]) => high - low) as [number, number];
    const made = form(space);
    const numbers = made && [
      ...made.least,
      ...made.greatest,
      ...made.windows.flatMap((one) => [...one.least, ...one.greatest]),
    ];
    if (numbers === undefined) return [];
    if (numbers.every((one) => Number.isFinite(one)) && made!.least.every((low, k) => low < made!.greatest[k]!))
      return [];
    const expected = 'a board with finite corners';
    return [{ code: 'inconsistent', path: `box.braces[${i}].form`, got: made, expected, remedy: 'Correct the form.' }];
  });
}

function bracePiece(box: BoxOfPanels, index: number): Piece | Reason {
  const { form, at, thickness, ...brace } = box.braces[index]!;
  const name = box.braces.length > 1 ? `brace ${index + 1}` : 'brace';
  const axis = axisOfBrace(brace);
  const [low, high] = between(box, axis);
  if (at - thickness / 2 < low || at + thickness / 2 > high) {
    const words = told`The middle of ${name} is at ${at}, but between the panels there is room from ${low + thickness / 2} to ${high - thickness / 2}.`;
    return reasonOf('brace-outside', words, 4);
  }
  const plane = planeAcross(axis);
  const ranges = plane.axes.map((one) => between(box, one));
  const [across, up] = ranges.map(([from, to]) => to - from) as [number, number];
  const board = form([across, up]);
  if (board === undefined || board.greatest[0] > across + NANOMETRE || board.greatest[1] > up + NANOMETRE) {
    const words = told`The form of ${name} leaves no board with its openings in a space of ${across} by ${up}. Use a narrower border or a shorter reach.`;
    return reasonOf('brace-form', words, 4);
  }
  const least: [number, number, number] = [0, 0, 0];
  const greatest: [number, number, number] = [0, 0, 0];
  least[axis] = at - thickness / 2;
  greatest[axis] = at + thickness / 2;
  plane.axes.forEach((one, k) => {
    least[one] = ranges[k]![0] + board.least[k]!;
    greatest[one] = ranges[k]![0] + board.greatest[k]!;
  });
  const place: Piece['place'] = { least: pointAt(...least), greatest: pointAt(...greatest) };
  const around = facesAround(plane);
  const touches = (side: Side) => {
    const k = side === 'left' || side === 'right' ? 0 : 1;
    const far = side === 'right' || side === 'top';
    return far ? Math.abs(board.greatest[k]! - [across, up][k]!) < NANOMETRE : Math.abs(board.least[k]!) < NANOMETRE;
  };
  const edges = bySide((side): PieceEdge => {
    const edge: PieceEdge = { covers: false, visible: false, cuts: [] };
    return touches(side) ? { ...edge, meets: around[side] } : edge;
  });
  const cutouts = board.windows.map(({ least: from, greatest: to, cornerRadius }): Cutout => {
    const middle = [0, 1].map((k) => (from[k]! + to[k]!) / 2 - board.least[k]!) as [number, number];
    return {
      part: 'opening',
      across: si('length', middle[0]),
      up: si('length', middle[1]),
      opening: {
        width: si('length', to[0] - from[0]),
        height: si('length', to[1] - from[1]),
        cornerRadius: si('length', cornerRadius),
      },
    };
  });
  const size = (k: number) => si('length', board.greatest[k]! - board.least[k]!);
  const material = box.boardOf(undefined);
  return pieceOf({
    name,
    width: size(0),
    height: size(1),
    thickness,
    board: material,
    ...(material.grained && { grain: size(0) > size(1) ? 'width' : 'height' }),
    edges,
    cutouts,
    place,
  });
}

/** The axis that a brace divides. */
export const acrossAxis = ({ place: { least, greatest }, thickness }: Piece): number =>
  [0, 1, 2].find((k) => Math.abs(greatest[k]! - least[k]! - thickness) < NANOMETRE) ?? 0;

/** Whether the common part of two boards lies in an opening of one of them. */
function passes(piece: Piece, low: readonly number[], high: readonly number[]): boolean {
  const axis = acrossAxis(piece);
  const plane = planeAcross(axis);
  const at = (corner: readonly number[]) =>
    inPlane(plane, piece.place.least, piece.place.greatest, plane.axes.map((k) => corner[k]!) as [number, number]);
  const [from, to] = [at(low), at(high)];
  return piece.cutouts.some(({ across, up, opening }) => {
    if (opening === undefined || 'diameter' in opening) return false;
    const half = [opening.width / 2, opening.height / 2] as const;
    return [across, up].every((centre, k) => from[k]! > centre - half[k]! && to[k]! < centre + half[k]!);
  });
}

/** The braces as pieces, and why some do not fit. */
export function bracePieces(box: BoxOfPanels): {
  readonly pieces: readonly Piece[];
  readonly because: readonly Reason[];
} {
  const made = box.braces.map((_, i) => bracePiece(box, i));
  const pieces = made.filter((one): one is Piece => 'place' in one);
  const because = made.filter((one): one is Reason => 'code' in one);
  for (const [i, one] of pieces.entries()) {
    for (const other of pieces.slice(i + 1)) {
      const low = one.place.least.map((at, k) => Math.max(at, other.place.least[k]!));
      const high = one.place.greatest.map((at, k) => Math.min(at, other.place.greatest[k]!));
      if (low.some((at, k) => at >= high[k]! - NANOMETRE) || passes(one, low, high) || passes(other, low, high))
        continue;
      const words = `${one.name} and ${other.name} cross. Move one, let it pass through an opening of the other, or shorten it.`;
      because.push(reasonOf('braces-cross', words, 4));
    }
  }
  return { pieces, because };
}
