import { format } from '@airspring/core/quantity';
import type { NestedPart, NestedSheet } from '../nesting/index.js';
import type { Piece } from '../panel/index.js';
import { liesAlongWidth } from '../panel/piece.js';
import { capital, type Drawing, type Label, line, millimetres as mm, moved, rectangle, type Shape } from './drawing.js';
import { pieceShapes } from './piece-drawing.js';

/** A piece as it lies on its sheet, with its cutouts; without the piece, its outline. */
function partShapes({ name, x, y, length, width, turned }: NestedPart, pieces: readonly Piece[]): readonly Shape[] {
  const piece = pieces.find((one) => one.name === name);
  if (piece === undefined) return [rectangle('cut', [x, y], length, width)];
  // Its length lies along x; a piece that is drawn upright is turned for that, and once more where the nesting turned it.
  const quarter = liesAlongWidth(piece) === turned;
  return pieceShapes(piece).map((shape) => moved(shape, quarter ? [x + length, y] : [x, y], quarter));
}

/**
 * The drawing of a sheet with the parts on it, the cuts in their order, and what is left over. `pieces` adds the cutouts of each piece
 * by its name, for a router that cuts all of them.
 *
 * @example toSvg(sheetDrawing(nesting.sheets[0], { pieces: box.pieces }))
 */
export function sheetDrawing(
  sheet: NestedSheet,
  { pieces = [] }: { readonly pieces?: readonly Piece[] | undefined } = {},
): Drawing {
  const { name, length, width, parts, cuts, offcuts } = sheet;
  const used = parts.reduce((sum, part) => sum + part.length * part.width, 0);
  const labels: Label[] = parts.flatMap((part): Label[] => {
    const at = [part.x + part.length / 2, part.y + part.width / 2] as const;
    return [{ at, text: `${part.name}  ${mm(part.length)} × ${mm(part.width)}`, size: 'normal', clear: true }];
  });
  const left = offcuts
    .filter((one) => one.length > 0.1 && one.width > 0.1)
    .map(
      (one): Label => ({
        at: [one.x + one.length / 2, one.y + one.width / 2],
        text: `left over  ${mm(one.length)} × ${mm(one.width)}`,
        size: 'small',
        clear: true,
      }),
    );
  const numbered = cuts.map(({ across, at, from, to }, i): Label => {
    // The number stands near the end at which the saw begins, one after another a little farther in.
    const along = from + Math.min((to - from) / 2, 0.035);
    return { at: across === 'x' ? [at, along] : [along, at], text: String(i + 1), size: 'small', ringed: true };
  });
  return {
    title: `${capital(name)}: ${mm(length)} × ${mm(width)} mm`,
    subtitle: `${parts.length} parts, ${format('area', used, 'm²', 3)} of ${format('area', length * width, 'm²', 3)}; cuts in the order of their numbers; lengths in mm`,
    description: `A sheet of ${mm(length)} by ${mm(width)} mm with ${parts.length} parts, to be sawn by ${cuts.length} cuts from edge to edge.`,
    shapes: [
      ...offcuts.map(({ x, y, length: long, width: wide }) => rectangle('note', [x, y], long, wide, 'tint')),
      ...parts.flatMap((part) => partShapes(part, pieces)),
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
    grain: 'x',
  };
}
