import type { NestedPart, NestedSheet } from '../nesting/index.js';
import type { Piece } from '../panel/index.js';
import { liesAlongWidth } from '../panel/piece.js';
import { told, UNIT, UNITS, type Words } from '../words/told.js';
import { capital, type Drawing, type Label, line, moved, rectangle, type Shape } from './drawing.js';
import { type CutBoard, outlineShapes } from './outline-drawing.js';
import { pieceShapes } from './piece-drawing.js';

/** A piece as it lies on its sheet, with its cutouts; without the piece, its outline. */
function partShapes(
  { name, x, y, length, width, turned }: NestedPart,
  pieces: readonly Piece[],
  boards: readonly CutBoard[],
): readonly Shape[] {
  const put = (shapes: readonly Shape[], lies: boolean) => {
    // Its length lies along x; a piece that is drawn upright is turned for that, and once more where the nesting turned it.
    const quarter = lies === turned;
    return shapes.map((shape) => moved(shape, quarter ? [x + length, y] : [x, y], quarter));
  };
  const piece = pieces.find((one) => one.name === name);
  if (piece) return put(pieceShapes(piece), liesAlongWidth(piece));
  const board = boards.find((one) => one.board.name === name);
  if (board === undefined) return [rectangle('cut', [x, y], length, width)];
  const { shapes, blank } = outlineShapes(board);
  return [rectangle('note', [x, y], length, width), ...put(shapes, blank[0] >= blank[1])];
}

interface Area {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** Where the words of a rectangle stand, and how much room they have. */
const middleOf = ({ x, y, length, width }: Area) => ({
  at: [x + length / 2, y + width / 2] as const,
  room: [length, width] as const,
});
const size = ({ length, width }: Area): Words => told`${length}\u00a0×\u00a0${width}`;

/**
 * The drawing of a sheet with the parts on it, the cuts in their order, and what is left over. `pieces` adds the cutouts of each piece
 * by its name, for a router that cuts all of them, and `boards` does so for boards by their outlines; `name` is what the sheet is called, where several of one size are cut.
 *
 * @example toSvg(sheetDrawing(nesting.sheets[0], { pieces: box.pieces }))
 */
export function sheetDrawing(
  sheet: NestedSheet,
  {
    pieces = [],
    boards = [],
    name = sheet.name,
  }: {
    readonly pieces?: readonly Piece[] | undefined;
    readonly boards?: readonly CutBoard[] | undefined;
    readonly name?: string | undefined;
  } = {},
): Drawing {
  const { length, width, parts, cuts, offcuts } = sheet;
  const used = parts.reduce((sum, part) => sum + part.length * part.width, 0);
  const labels: Label[] = parts.flatMap((part): Label[] => {
    return [{ ...middleOf(part), text: told`${part.name} ${size(part)}`, shorter: size(part), size: 'normal' }];
  });
  const left = offcuts.map(
    (one): Label => ({ ...middleOf(one), text: told`left over ${size(one)}`, size: 'small', optional: true }),
  );
  const numbered = cuts.map(({ across, at, from, to }, i): Label => {
    // The number stands near the end at which the saw begins.
    const along = from + Math.min((to - from) / 2, 0.035);
    const place = (reach: number) => (across === 'x' ? ([at, reach] as const) : ([reach, at] as const));
    return { at: place(along), towards: place(to), text: String(i + 1), size: 'small', ringed: true };
  });
  return {
    title: told`${capital(name)}: ${length} × ${width} ${UNIT}`,
    subtitle: told`${String(parts.length)} parts, ${String(Math.round((100 * used) / (length * width)))} % of the sheet; cuts in the order of their numbers; lengths in ${UNITS}`,
    description: told`A sheet of ${length} by ${width} ${UNIT} with ${String(parts.length)} parts, to be sawn by ${String(cuts.length)} cuts from edge to edge.`,
    shapes: [
      ...offcuts.map(({ x, y, length: long, width: wide }) => rectangle('note', [x, y], long, wide, 'tint')),
      ...parts.flatMap((part) => partShapes(part, pieces, boards)),
      rectangle('note', [0, 0], length, width),
      ...cuts.map(({ across, at, from, to }) =>
        across === 'x' ? line('note', [at, from], [at, to]) : line('note', [from, at], [to, at]),
      ),
    ],
    dimensions: [
      { kind: 'overall', along: 'x', ends: [0, length], beside: 0, side: 'below', row: 0 },
      { kind: 'overall', along: 'y', ends: [0, width], beside: 0, side: 'left', row: 0 },
    ],
    labels: [...labels, ...left, ...numbered],
    callouts: [],
    ...(parts.some(({ grained }) => grained) && { grain: 'x' }),
  };
}
