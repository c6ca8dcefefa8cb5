import { si } from '@airspring/core/quantity';
import type { Face } from '@airspring/core/space';
import type { Cutout } from '../panel/cutout.js';
import { bySide } from '../panel/piece.js';
import { facesAround, planeOf } from '../panel/plane.js';
import { joined, told, UNIT, UNITS, type Words } from '../words/told.js';
import { arrows, besideLines, type Pointing } from './behind-piece.js';
import { cutoutCallouts, cutoutNotes, cutoutShapes } from './cutout-drawing.js';
import { type At, capital, type Dimension, type Drawing, rectangle, type Shape } from './drawing.js';
import { cornersOf, edgeLines, edgeWords, type OutlinedBoard } from './outline-edges.js';

const distinct = (all: readonly number[]): number[] =>
  [...new Map(all.map((at) => [Math.round(at * 1e4), at])).values()].sort((a, b) => a - b);

const reachOf = (points: readonly At[], k: 0 | 1): readonly [number, number] => [
  Math.min(...points.map((at) => at[k])),
  Math.max(...points.map((at) => at[k])),
];

/** A place on a face as it is seen from outside, from the lower left of the outer surface; `size` is that of the surface. */
export function seenFromOutside(face: Face | undefined, size: At, [across, up]: At): At {
  const [left, down] = face === undefined ? [false, false] : planeOf(face).turned;
  return [left ? size[0] - across : across, down ? size[1] - up : up];
}

/** A board as it lies in its drawing: both surfaces from the lower left of the blank. */
function laid({ outline, inner = outline, blank, bent, face, opening = [] }: OutlinedBoard) {
  const own = outline.map(([x, y]): At => [x - reachOf(outline, 0)[0], y - reachOf(outline, 1)[0]]);
  const size: At = [reachOf(own, 0)[1], reachOf(own, 1)[1]];
  const from: At = [reachOf(outline, 0)[0], reachOf(outline, 1)[0]];
  const seen = (points: readonly At[]) =>
    points.map(([x, y]) => seenFromOutside(face, size, [x - from[0], y - from[1]]));
  const both = [...seen(outline), ...seen(inner)];
  const [across, up] = [reachOf(both, 0), reachOf(both, 1)];
  // Laid flat, a bent board has a size, and no place for either surface.
  const held: At = blank && bent ? blank : [across[1] - across[0], up[1] - up[0]];
  const put = (points: readonly At[]) => points.map(([x, y]): At => [x - across[0], y - up[0]]);
  return {
    outer: put(seen(outline)),
    inner: put(seen(inner)),
    opening: put(seen(opening)),
    blank: held,
    size,
    start: [-across[0], -up[0]] as At,
  };
}

/** A board as it lies in its drawing, with its cutouts in place, and the shapes of both. */
function shapesOf(board: OutlinedBoard, held: readonly Cutout[]) {
  const { outer, inner, opening, blank, start } = laid(board);
  const cutouts = held.map(
    (one): Cutout => ({
      ...one,
      across: si('length', one.across + start[0]),
      up: si('length', one.up + start[1]),
    }),
  );
  const { bent, angles = [] } = board;
  const isRectangle = bent !== undefined || angles.some((angle) => Math.abs(angle - Math.PI / 2) > 1e-9);
  const body: Shape[] = isRectangle
    ? [rectangle('cut', [0, 0], blank[0], blank[1]), ...(bent ? [] : edgeLines(outer, inner, blank))]
    : [{ purpose: 'cut', form: 'path', closed: true, corners: outer.map((at) => ({ at })) }];
  const through: Shape[] =
    opening.length > 0 ? [{ purpose: 'cut', form: 'path', closed: true, corners: opening.map((at) => ({ at })) }] : [];
  return {
    outer,
    inner,
    opening,
    blank,
    cutouts,
    isRectangle,
    shapes: [...body, ...through, ...cutouts.flatMap(cutoutShapes)],
  };
}

/** A board with what is cut into it, without notes, for a sheet of several; and the rectangle that it is sawn from. */
export function outlineShapes({ board, cutouts }: CutBoard): { readonly shapes: readonly Shape[]; readonly blank: At } {
  const { shapes, blank } = shapesOf(board, cutouts);
  return { shapes, blank };
}

/** A board with cutouts, placed from the lower left of its outer surface as it is seen. */
export interface CutBoard {
  readonly board: OutlinedBoard;
  readonly cutouts: readonly Cutout[];
}

/**
 * A board by its outline as it is seen from outside, in the least rectangle that holds its outer and its inner surface: its corners, what it
 * meets at each edge and at which angle it is cut, its cutouts, and all lengths from the lower left. `cutouts` are placed from the lower left
 * of the outer surface as it is seen. `pointing` marks by an arrow where something behind a cutout points to.
 *
 * @example toSvg(outlineDrawing({ name: 'left', thickness: 0.015, outline: [[0, 0], [0.36, 0], [0.2, 0.48], [0, 0.48]] }))
 */
export function outlineDrawing(
  board: OutlinedBoard,
  {
    cutouts: held = [],
    pointing = [],
  }: { readonly cutouts?: readonly Cutout[] | undefined; readonly pointing?: readonly Pointing[] | undefined } = {},
): Drawing {
  const { name, thickness, bent, face } = board;
  const { outer, inner, opening, blank, cutouts, isRectangle, shapes } = shapesOf(board, held);
  const corners = bent ? [] : [...cornersOf(outer), ...cornersOf(opening), ...(isRectangle ? inner : [])];
  const ends = ([0, 1] as const).map((k) =>
    distinct([0, ...corners.map((at) => at[k]), ...cutouts.map(({ across, up }) => [across, up][k]!), blank[k]]),
  );
  const dimensions = ([0, 1] as const).map(
    (k): Dimension => ({
      kind: 'running',
      along: k === 0 ? 'x' : 'y',
      ends: ends[k]!,
      beside: 0,
      side: k === 0 ? 'below' : 'left',
      row: 0,
    }),
  );
  const around = face && facesAround(planeOf(face));
  const marked = around
    ? arrows({ cutouts, edges: bySide((side) => ({ meets: around[side] })) }, pointing)
    : { shapes: [], callouts: [] };
  const leading = [...cutoutCallouts({ cutouts, thickness }), ...marked.callouts];
  const words = edgeWords(
    board,
    outer,
    blank,
    ends,
    leading.map(({ at }) => at[1]),
  );
  const sizes = told`${blank[0]} × ${blank[1]}`;
  const notes: Words[] = [
    ...(isRectangle && !bent ? ['a thin line is the edge of the outer surface, a dashed one that of the inner'] : []),
    ...(isRectangle ? ['angles between outer surface and cut'] : []),
    ...(bent ? [bentWords(board)] : []),
  ];
  return {
    title: told`${capital(name)}: ${sizes} × ${thickness} ${UNIT}`,
    subtitle: joined([told`seen from outside; lengths in ${UNITS}`, ...notes], '; '),
    description: told`The ${name}, ${sizes} ${UNIT} around, with ${String(cornersOf(outer).length)} corners${cutouts.length > 0 ? ` and ${cutouts.length} cutouts` : ''}, seen from outside.`,
    shapes: [...shapes, ...cutouts.flatMap(cutoutNotes), ...marked.shapes],
    dimensions,
    ...besideLines(words.labels, [...leading, ...words.callouts], blank[1]),
  };
}

/** How long both surfaces of a bent board are, and which one is hollow. */
function bentWords({ outline, inner = outline, bent }: OutlinedBoard): Words {
  const wide = (points: readonly At[]) => reachOf(points, 0)[1] - reachOf(points, 0)[0];
  const hollow = bent?.hollow === 'both' ? 'both are hollow' : `the ${bent?.hollow} one is hollow`;
  return told`laid flat: outer surface ${wide(outline)}, inner surface ${wide(inner)}, ${hollow}`;
}
