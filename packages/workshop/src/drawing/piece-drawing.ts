import type { Face } from '@airspring/core/space';
import { boltsOf, type Cutout, type Form } from '../panel/cutout.js';
import type { Piece, Side } from '../panel/index.js';
import { sides } from '../panel/piece.js';
import {
  type At,
  type Callout,
  capital,
  type Dimension,
  type Drawing,
  type Label,
  line,
  millimetres as mm,
  type Purpose,
  rectangle,
  roundedRectangle,
  type Shape,
} from './drawing.js';

const formShape = (purpose: Purpose, at: readonly [number, number], form: Form): Shape =>
  'diameter' in form
    ? { purpose, form: 'circle', centre: at, radius: form.diameter / 2 }
    : roundedRectangle(purpose, at, form.width, form.height, form.cornerRadius);

const wider = (form: Form, by: number): Form =>
  'diameter' in form
    ? ({ diameter: form.diameter + 2 * by } as Form)
    : ({ width: form.width + 2 * by, height: form.height + 2 * by, cornerRadius: form.cornerRadius + by } as Form);

/** What a cutout is in a drawing. */
export function cutoutShapes({ across, up, opening, recess, bolts, roundOver }: Cutout): Shape[] {
  const at = [across, up] as const;
  const shapes: Shape[] = [];
  if (recess) shapes.push({ ...formShape('pocket', at, recess.form), filled: 'tint' });
  // The recess is a ring: nothing is left where the opening is.
  if (opening) shapes.push({ ...formShape('cut', at, opening), ...(recess && { filled: 'solid' }) });
  if (opening && roundOver) shapes.push(formShape('inside', at, wider(opening, roundOver)));
  if (bolts) {
    shapes.push({ purpose: 'centre', form: 'circle', centre: at, radius: bolts.diameter / 2 });
    for (const [x, y] of boltsOf(bolts))
      shapes.push({ purpose: 'drill', form: 'circle', centre: [across + x, up + y], radius: bolts.hole / 2 });
  }
  return shapes;
}

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
function edgeText({ meets, joint, covers, cuts, roundOver }: Piece['edges'][Side]): string {
  if (meets === undefined) return 'free edge';
  const work = cuts.map((cut) =>
    cut.form === 'bevel'
      ? `bevel ${degrees(cut.angle)}°`
      : `${joint === 'rabbet' ? 'rabbet' : 'groove'} ${mm(cut.width)} × ${mm(cut.depth)}`,
  );
  const how = work.length > 0 ? work : [joint === undefined ? 'against' : covers ? 'covers' : 'against'];
  const round = roundOver ? [`round over ${mm(roundOver)}`] : [];
  const told = [...how, ...round].join(', ');
  return work.length > 0 ? `${meets}: ${told}` : `${told} ${meets}`;
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

const formWords = (form: Form): string =>
  'diameter' in form
    ? `⌀ ${mm(form.diameter)}`
    : `${mm(form.width)} × ${mm(form.height)}${form.cornerRadius > 0 ? `, corners R ${mm(form.cornerRadius)}` : ''}`;

function callouts({ cutouts, thickness }: Piece): Callout[] {
  return cutouts.flatMap(({ part, across, up, opening, recess, bolts, roundOver }) => {
    const reach = (form: Form) => ('diameter' in form ? form.diameter / 2 : form.width / 2);
    const made: { text: string; reach: number }[] = [];
    if (opening) made.push({ text: `${part}: ${formWords(opening)} through`, reach: reach(opening) });
    if (recess)
      made.push({
        text: `recess ${formWords(recess.form)}, ${mm(recess.depth)} deep of ${mm(thickness)}`,
        reach: reach(recess.form),
      });
    if (bolts)
      made.push({ text: `${bolts.count} × ⌀ ${mm(bolts.hole)} on ⌀ ${mm(bolts.diameter)}`, reach: bolts.diameter / 2 });
    if (roundOver && opening)
      made.push({ text: `inner edge rounded, R ${mm(roundOver)}`, reach: reach(opening) + roundOver });
    return made.map(({ text, reach: radius }, i) => {
      // Lines leave the circles at different heights, so that each is seen to end on its own.
      const angle = ((made.length - 1) / 2 - i) * 0.35;
      return { at: [across + radius * Math.cos(angle), up + radius * Math.sin(angle)], text };
    });
  });
}

const places = (edge: number, all: readonly number[]): number[] => {
  const rounded = new Map([0, ...all, edge].map((at) => [Math.round(at * 1e4), at]));
  return [...rounded.values()].sort((a, b) => a - b);
};

/** Something behind a cutout that points to one of the panels around. */
export interface Pointing {
  /** The part of its cutouts, as `vent`. */
  readonly part: string;
  readonly towards: Face;
  /** What points there, in words. */
  readonly says: string;
}

/** Where a board behind a panel is glued to it: a rectangle of the drawing. */
export interface Meeting {
  /** What the board is called. */
  readonly says: string;
  readonly least: At;
  readonly greatest: At;
  /** Which of its edges are dimensioned, from the left and from below. */
  readonly told: readonly [across: readonly number[], up: readonly number[]];
}

/** A shaded band for each board, and beside the drawing what it is; equal words once. */
function bands(meetings: readonly Meeting[]): { shapes: Shape[]; callouts: Callout[] } {
  const size = ({ least, greatest }: Meeting) => [greatest[0] - least[0], greatest[1] - least[1]] as const;
  const named = new Map(meetings.map((one) => [one.says, one]));
  return {
    shapes: meetings.map((one) => rectangle('note', one.least, ...size(one), 'tint')),
    callouts: [...named.values()].map((one) => ({
      at: [one.greatest[0] - Math.min(0.004, size(one)[0] / 2), one.least[1] + size(one)[1] / 2],
      text: `inside: ${one.says}`,
    })),
  };
}

const AWAY = { left: [-1, 0], right: [1, 0], bottom: [0, -1], top: [0, 1] } as const;

/** An arrow from the edge of a cutout to the side at which the panel is that something behind it points to. */
function arrows({ cutouts, edges }: Piece, pointings: readonly Pointing[]): { shapes: Shape[]; callouts: Callout[] } {
  const found = pointings.flatMap(({ part, towards, says }) => {
    const side = sides.find((one) => edges[one].meets === towards);
    if (side === undefined) return [];
    const [x, y] = AWAY[side];
    return cutouts
      .filter((one) => one.part === part && one.opening)
      .map(({ across, up, opening }) => {
        const half = opening && 'diameter' in opening ? opening.diameter / 2 : 0.02;
        const at = (along: number, beside = 0) =>
          [across + along * half * x + beside * half * y, up + along * half * y + beside * half * x] as const;
        return {
          lines: [[at(0), at(0.9)] as const, [at(0.9), at(0.6, 0.2)] as const, [at(0.9), at(0.6, -0.2)] as const],
          tip: at(0.9),
          says,
        };
      });
  });
  return {
    shapes: found.flatMap(({ lines }) => lines.map(([from, to]) => line('note', from, to))),
    callouts: found.map(({ tip, says }) => ({ at: tip, text: says })),
  };
}

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
    places(width, [...cutouts.map(({ across }) => across), ...meeting.flatMap(({ told }) => told[0])]),
    places(height, [...cutouts.map(({ up }) => up), ...meeting.flatMap(({ told }) => told[1])]),
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
  return {
    title: `${capital(name)}: ${mm(width)} × ${mm(height)} × ${mm(thickness)} mm`,
    description: `The ${name}, ${mm(width)} mm wide, ${mm(height)} mm high and ${mm(thickness)} mm thick, ${made}, ${seen}.`,
    subtitle: `${made}; ${seen}; lengths in mm`,
    shapes: [...met.shapes, ...pieceShapes(piece), ...cutouts.flatMap(centreMark), ...marked.shapes],
    dimensions,
    labels: edgeLabels(piece, ends, standing),
    callouts: [...callouts(piece), ...marked.callouts, ...met.callouts],
    ...(grain && { grain: grain === 'width' ? 'x' : 'y' }),
  };
}

/** Two short lines across the middle of a cutout. */
function centreMark({ across, up, opening, recess }: Cutout): Shape[] {
  const form = opening ?? recess?.form;
  const half =
    form === undefined
      ? 0.01
      : Math.min(0.012, ('diameter' in form ? form.diameter : Math.min(form.width, form.height)) / 4);
  return [
    line('centre', [across - half, up], [across + half, up]),
    line('centre', [across, up - half], [across, up + half]),
  ];
}
