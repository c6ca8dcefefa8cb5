import type { Piece, Side } from '../panel/index.js';
import { sides } from '../panel/piece.js';
import { joined, told, UNIT, UNITS, type Words } from '../words/told.js';
import { arrows, bands, besideLines, type Meeting, type Pointing } from './behind-piece.js';
import { cutoutCallouts, cutoutNotes, cutoutShapes } from './cutout-drawing.js';
import { capital, type Dimension, type Drawing, type Label, line, rectangle, type Shape } from './drawing.js';

/** The lines along the edges: grooves and slopes on the inner side. */
function edgeShapes({ width, height, thickness, edges }: Piece): Shape[] {
  const at = (side: Side, from: number): Shape => {
    const across = side === 'left' || side === 'right';
    const place = side === 'left' || side === 'bottom' ? from : (across ? width : height) - from;
    return across ? line('inside', [place, 0], [place, height]) : line('inside', [0, place], [width, place]);
  };
  return sides.flatMap((side) =>
    edges[side].cuts.flatMap((cut) => {
      if (cut.form === 'bevel') return [at(side, thickness * Math.tan(cut.angle))];
      return [...(cut.from > 0 ? [at(side, cut.from)] : []), at(side, cut.from + cut.width)];
    }),
  );
}

/** The board as it is cut, without notes: for a sheet of several as well. */
export const pieceShapes = (piece: Piece): readonly Shape[] => [
  rectangle('cut', [0, 0], piece.width, piece.height),
  ...edgeShapes(piece),
  ...piece.cutouts.flatMap(cutoutShapes),
];

const degrees = (angle: number): string => String(Number(((angle * 180) / Math.PI).toFixed(1)));

/** What stands along an edge: what it meets, and how. */
function edgeText({ meets, joint, covers, cuts, roundOver }: Piece['edges'][Side]): Words {
  if (meets === undefined) return 'free edge';
  const work = cuts.map(
    (cut): Words =>
      cut.form === 'bevel'
        ? `bevel ${degrees(cut.angle)}°`
        : told`${joint === 'rabbet' ? 'rabbet' : 'groove'} ${cut.width} × ${cut.depth}`,
  );
  const how = work.length > 0 ? work : [joint === undefined ? 'against' : covers ? 'covers' : 'against'];
  const round = roundOver ? [told`round over ${roundOver}`] : [];
  const made = joined([...how, ...round], ', ');
  return work.length > 0 ? told`${meets}: ${made}` : told`${made} ${meets}`;
}

/** Where along an edge its words stand: in the middle, or where no length or line that ends at a cutout crosses them. */
function along(edge: number, crossed: readonly number[]): number {
  const away = (share: number) => Math.min(Infinity, ...crossed.map((at) => Math.abs(at - share * edge)));
  return edge * [0.5, 0.8, 0.2].reduce((best, one) => (away(one) > away(best) ? one : best));
}

function edgeLabels({ width, height, edges }: Piece, ends: readonly (readonly number[])[], standing: boolean): Label[] {
  // Where no length ends on the way, the whole one stands in the middle.
  const crossed = (k: 0 | 1, edge: number) => (ends[k]!.length > 2 ? ends[k]!.slice(1, -1) : [edge / 2]);
  const across = along(width, crossed(0, width));
  const up = along(height, crossed(1, height));
  const at = { bottom: [across, 0], top: [width / 2, height], left: [0, up], right: [width, up] } as const;
  const textOf = (edge: Piece['edges'][Side]) => (standing ? (edge.meets ?? '') : edgeText(edge));
  return sides.map((side) => ({ at: at[side], text: textOf(edges[side]), size: 'small', beside: side, clear: true }));
}

const places = (edge: number, all: readonly number[]): number[] => {
  const rounded = new Map([0, ...all, edge].map((at) => [Math.round(at * 1e4), at]));
  return [...rounded.values()].sort((a, b) => a - b);
};

/**
 * The drawing of one piece as it is seen from outside: outline, cutouts, what is made at its edges, and all lengths from its lower left
 * corner. `pointing` marks by an arrow where something behind a cutout points to, as the arm of a bent vent. `meeting` shades
 * where boards inside are glued to it. `standing` says that it is a panel of a box that stands: its edges then name the panels beside it, and nothing is said of joints and board.
 *
 * @example toSvg(pieceDrawing(panelBox(box).pieces[0]))
 */
export function pieceDrawing(
  piece: Piece,
  {
    pointing = [],
    meeting = [],
    standing = false,
  }: {
    readonly pointing?: readonly Pointing[] | undefined;
    readonly meeting?: readonly Meeting[] | undefined;
    readonly standing?: boolean | undefined;
  } = {},
): Drawing {
  const { name, width, height, thickness, board, grain, cutouts } = piece;
  const from: Omit<Dimension, 'kind' | 'ends' | 'row'>[] = [
    { along: 'x', beside: 0, side: 'below' },
    { along: 'y', beside: 0, side: 'left' },
  ];
  const ends = [
    places(width, [...cutouts.map(({ across }) => across), ...meeting.flatMap((one) => one.told[0])]),
    places(height, [...cutouts.map(({ up }) => up), ...meeting.flatMap((one) => one.told[1])]),
  ];
  const dimensions = from.flatMap((one, k): Dimension[] => {
    const all = ends[k]!;
    const overall: Dimension = { ...one, kind: 'overall', ends: [0, [width, height][k]!], row: all.length > 2 ? 1 : 0 };
    return all.length > 2 ? [{ ...one, kind: 'running', ends: all.slice(0, -1), row: 0 }, overall] : [overall];
  });
  const marked = arrows(piece, pointing);
  const met = bands(meeting);
  const seen = piece.face ? 'seen from outside' : 'seen from the side';
  const grainWords = grain ? `, grain along the ${grain}` : '';
  const made = standing ? 'of the box that stands' : `${board.name}${grainWords}`;
  const leading = [...cutoutCallouts(piece), ...marked.callouts, ...met.callouts];
  const { labels, callouts } = besideLines(edgeLabels(piece, ends, standing), leading, height);
  return {
    title: told`${capital(name)}: ${width} × ${height} × ${thickness} ${UNIT}`,
    description: told`The ${name}, ${width} ${UNIT} wide, ${height} ${UNIT} high and ${thickness} ${UNIT} thick, ${made}, ${seen}.`,
    subtitle: told`${made}; ${seen}; lengths in ${UNITS}`,
    shapes: [...met.shapes, ...pieceShapes(piece), ...cutouts.flatMap(cutoutNotes), ...marked.shapes],
    dimensions,
    labels,
    callouts,
    ...(grain && { grain: grain === 'width' ? 'x' : 'y' }),
  };
}
