import { NANOMETRE } from '@airspring/core/quantity';
import type { Changed } from '../standing/chosen.js';
import type { Standing } from '../standing/standing.js';
import type { MadeBoard, NewHole, Part } from '../standing/work.js';
import type { Phrasing } from '../words/phrasing.js';

/** How far a board reaches beyond what it covers, and a guide beyond its hole, on each side, m. */
const [BEYOND, GUIDE] = [0.02, 0.04];
/** Room for foam around a plug, on the diameter, and how far its rim reaches, m. */
const [FOAM, RIM] = [0.002, 0.015];

/** One shape to cut. */
function plate(name: string, count: number, form: Plate['form'], use: string, thickness: number): Plate {
  return { name, count, form, use, thickness };
}

/** Equal flat parts to cut. */
export interface Plate {
  readonly name: string;
  readonly count: number;
  readonly form: { readonly diameter: number } | { readonly width: number; readonly height: number };
  readonly hole?: number;
  readonly thickness: number;
  readonly use: string;
}

const square = (edge: number) => ({ width: edge, height: edge });

/** The flat parts that a board stands for. */
function platesOf({ what, count }: Part, board: MadeBoard, thickness: number): Plate[] {
  if ('covers' in board)
    return [
      plate(what, count, square(board.covers + 2 * BEYOND), 'Glued and screwed tight over the opening', thickness),
    ];
  if ('guides' in board) {
    const use = 'Clamped over the old hole, to lead the saw; cut its hole with the same saw first';
    return [{ ...plate('guide board', count, square(board.guides + 2 * GUIDE), use, thickness), hole: board.guides }];
  }
  if ('sides' in board)
    return [plate(what, count, { width: board.sides[0], height: board.sides[1] }, 'A side of the channel', thickness)];
  return [
    plate(
      'plug, inner disc',
      count,
      { diameter: board.plugs - FOAM },
      'Glued in the middle of the outer disc; a strip of closed-cell foam around it seals',
      thickness,
    ),
    plate(
      'plug, outer disc',
      count,
      { diameter: board.plugs + 2 * RIM },
      'The rim of the plug, screwed to the panel',
      thickness,
    ),
  ];
}

/** Equal boards of several steps as one. */
function gathered(plates: readonly Plate[]): Plate[] {
  const found = new Map<string, Plate>();
  for (const one of plates) {
    const key = JSON.stringify([one.name, one.form, one.hole]);
    const same = found.get(key);
    found.set(key, same ? { ...same, count: same.count + one.count } : one);
  }
  // Files are named after boards: no two are called the same.
  return [...found.values()].map((one, i, all) => {
    const alike = all.filter(({ name }) => name === one.name);
    return alike.length > 1 ? { ...one, name: `${one.name} ${alike.indexOf(all[i]!) + 1}` } : one;
  });
}

/** How a hole is made. */
function howOf(hole: NewHole, guided: boolean, { workshop }: Standing, say: Phrasing): string {
  if (hole.form === 'rectangle') return 'holes in its corners, and a jigsaw along the drawing';
  const saw = workshop.holeSaws.find((one) => Math.abs(one - hole.diameter) < NANOMETRE);
  if (saw === undefined) return 'with a jigsaw or a router, along the drawing';
  return `with the ${say.length(saw)} saw${guided ? ', behind the guide board' : ''}`;
}

/** Boards, holes, and what else is made or bought for a change; what has no drawing is told. */
export function changeParts({ design }: Changed, standing: Standing, say: Phrasing) {
  const { panelThickness } = standing;
  const { parts, holes } = design;
  const guided = parts.some(({ board }) => board && 'guides' in board);
  const plates = gathered(parts.flatMap((part) => (part.board ? platesOf(part, part.board, panelThickness) : [])));
  const others = parts.filter(({ tube, board }) => tube === undefined && board === undefined);
  const counted = new Map<string, { readonly hole: NewHole; readonly count: number }>();
  for (const hole of holes) {
    const key = JSON.stringify(hole);
    counted.set(key, { hole, count: (counted.get(key)?.count ?? 0) + 1 });
  }
  return {
    plates,
    openings: [...counted.values()].map(({ hole, count }) => ({
      what: hole.what,
      count,
      form: hole.form === 'circle' ? { diameter: hole.diameter } : { width: hole.sides[0], height: hole.sides[1] },
      how: howOf(hole, guided, standing, say),
    })),
    parts: others.map(({ what, count, size }) => `${count} × ${what}, ${say.phrase(size)}`),
    notes: others
      .filter(({ made }) => made === 'print')
      .map(({ what }) => `The ${what} is not made as a solid: it must follow the frames of your drivers.`),
  };
}
