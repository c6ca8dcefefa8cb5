import { type Length, si, type Volume } from '@airspring/core/quantity';
import type { Face, Point } from '@airspring/core/space';
import type { Board } from './board.js';
import type { BoxEdge } from './box-edges.js';
import { type Cutout, cutoutVolume } from './cutout.js';
import type { EdgeCut } from './joint.js';

/** The edges of a piece as it is seen, from outside if it is a panel. */
export const sides = ['left', 'right', 'bottom', 'top'] as const;
export type Side = (typeof sides)[number];

/** An edge of a piece. */
export interface PieceEdge {
  /** Which panel it meets; of a brace that ends free, nothing. */
  readonly meets?: Face;
  /** The edge of the box that it is part of. */
  readonly edge?: BoxEdge;
  readonly joint?: string;
  /** Whether it covers the panel that it meets. */
  readonly covers: boolean;
  /** Whether its end is seen from outside the box. */
  readonly visible: boolean;
  readonly cuts: readonly EdgeCut[];
  /** Radius of its outer corner. */
  readonly roundOver?: Length;
}

/** One board of a box, seen from outside; a brace is seen from the right, from above or from the front. */
export interface Piece {
  readonly name: string;
  /** The panel of the box that it is, or that it is a layer of. */
  readonly face?: Face;
  /** Across and up as it is seen, with what stands in grooves. */
  readonly width: Length;
  readonly height: Length;
  /** As measured. */
  readonly thickness: Length;
  readonly board: Board;
  /** Along which of its sizes the grain runs; left out where the board has none. */
  readonly grain?: 'width' | 'height';
  readonly edges: Readonly<Record<Side, PieceEdge>>;
  /** Centres are counted from its lower left corner as it is seen. */
  readonly cutouts: readonly Cutout[];
  /** Where it is in the box, from the left, bottom, front outer edge: its enclosing cuboid. */
  readonly place: { readonly least: Point; readonly greatest: Point };
  /** What is left of it after all cuts. */
  readonly volume: Volume;
}

/** A record of something for each side. */
export const bySide = <T>(of: (side: Side) => T): Readonly<Record<Side, T>> => ({
  left: of('left'),
  right: of('right'),
  bottom: of('bottom'),
  top: of('top'),
});

/** A point of a box, from its left, bottom, front outer edge, m. */
export const pointAt = (x: number, y: number, z: number): Point => [si('length', x), si('length', y), si('length', z)];

/** Whether the length of a piece in a cut list, which runs along its grain, is its width as it is drawn. */
export const liesAlongWidth = ({ width, height, grain }: Piece): boolean =>
  (grain ?? (width >= height ? 'width' : 'height')) === 'width';

/** What remains of a width or a height at a depth below the outer side. */
function remaining(size: number, thickness: number, edges: readonly PieceEdge[], depth: number): number {
  let left = size;
  for (const cut of edges.flatMap(({ cuts }) => cuts)) {
    if (cut.form === 'bevel') left -= depth * Math.tan(cut.angle);
    else if (depth > thickness - cut.depth) left -= cut.width;
  }
  return Math.max(0, left);
}

/**
 * The volume of a board with the cuts at its edges: a section at each depth is a product of two lengths, each linear between the
 * depths of the grooves, so that the rule of Simpson is exact.
 */
function boardVolume(
  width: number,
  height: number,
  thickness: number,
  { left, right, bottom, top }: Piece['edges'],
): number {
  const cuts = [left, right, bottom, top].flatMap((edge) => edge.cuts);
  const grooves = cuts.flatMap((cut) => (cut.form === 'groove' ? [thickness - cut.depth] : []));
  const levels = [0, ...grooves.sort((a, b) => a - b), thickness];
  const section = (depth: number) =>
    remaining(width, thickness, [left, right], depth) * remaining(height, thickness, [bottom, top], depth);
  let volume = 0;
  for (const [i, to] of levels.entries()) {
    const from = levels[i - 1] ?? 0;
    if (!(to > from)) continue;
    const inside = 1e-9 * (to - from);
    volume += ((to - from) / 6) * (section(from + inside) + 4 * section((from + to) / 2) + section(to - inside));
  }
  return volume;
}

/** A piece, with what is left of it. */
export function pieceOf(piece: Omit<Piece, 'volume'>): Piece {
  const { width, height, thickness, edges, cutouts } = piece;
  const holes = cutouts.reduce((sum, cutout) => sum + cutoutVolume(cutout, thickness), 0);
  const rounded = Object.values(edges).reduce((sum, { roundOver = 0 }, i) => {
    return sum + roundOver ** 2 * (1 - Math.PI / 4) * (i < 2 ? height : width);
  }, 0);
  return { ...piece, volume: si('volume', boardVolume(width, height, thickness, edges) - holes - rounded) };
}
