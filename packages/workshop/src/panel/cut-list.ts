import { inUnit, type Length } from '@airspring/core/quantity';
import { faces } from '@airspring/core/space';
import type { PanelBox } from './panel-box.js';
import { liesAlongWidth, type Piece, sides } from './piece.js';

/** Equal pieces to cut. */
export interface CutListRow {
  readonly names: readonly string[];
  readonly count: number;
  /** Along the grain, or the longer size of a board without one. */
  readonly length: Length;
  readonly width: Length;
  /** As measured. */
  readonly thickness: Length;
  readonly board: string;
  readonly grained: boolean;
  /** What is made at its edges, each once: 'rabbet 9 × 18 mm at front, back'. */
  readonly edges: readonly string[];
  /** Cutouts by what they are for. */
  readonly cutouts: readonly string[];
}

const millimetres = (length: number): string => String(Number(inUnit('length', length, 'mm').toFixed(2)));

const degrees = (angle: number): string => String(Number(((angle * 180) / Math.PI).toFixed(2)));

/** Panels in one order, so that two pieces of the same work have the same words. */
const order: readonly string[] = [...faces, ...sides];

const inMillimetres = (length: number): string => `${millimetres(length)} mm`;

/** The work at the edges of a piece, in words. */
function edgeWork({ edges }: Piece, says: (metres: number) => string): string[] {
  const work = new Map<string, string[]>();
  const add = (what: string, where: string) => work.set(what, [...(work.get(what) ?? []), where]);
  for (const side of sides) {
    const { cuts, meets = side, roundOver, joint } = edges[side];
    for (const cut of cuts) {
      if (cut.form === 'bevel') add(`bevel ${degrees(cut.angle)}°`, meets);
      else {
        const name = joint === 'rabbet' ? 'rabbet' : 'groove';
        const from = cut.from > 0 ? `, ${says(cut.from)} from the edge` : '';
        add(`${name} ${says(cut.width)} wide, ${says(cut.depth)} deep${from}`, meets);
      }
    }
    if (roundOver) add(`round over ${says(roundOver)}`, meets);
  }
  const inOrder = (where: readonly string[]) => [...where].sort((a, b) => order.indexOf(a) - order.indexOf(b));
  return [...work].map(([what, where]) => `${what}: ${inOrder(where).join(', ')}`).sort();
}

/**
 * The cut list: equal pieces in one row, the largest first. `says` writes the lengths of the work at edges, by default in millimetres.
 *
 * @validity pieces with one grain
 * @source own list of the pieces
 * @example cutList(panelBox(box)) // rows with length, width, thickness, count
 */
export function cutList(
  { pieces }: Pick<PanelBox, 'pieces'>,
  says: (metres: number) => string = inMillimetres,
): readonly CutListRow[] {
  const rows = new Map<string, CutListRow & { names: string[] }>();
  for (const piece of pieces) {
    const [length, width] = liesAlongWidth(piece) ? [piece.width, piece.height] : [piece.height, piece.width];
    const row = {
      length,
      width,
      thickness: piece.thickness,
      board: piece.board.name,
      grained: piece.grain !== undefined,
      edges: edgeWork(piece, says),
      cutouts: piece.cutouts.map(({ part }) => part),
    };
    // Sizes that differ by less than a nanometre are equal.
    const key = JSON.stringify(row, (_, value) => (typeof value === 'number' ? Math.round(value * 1e9) : value));
    const same = rows.get(key);
    rows.set(key, { names: [...(same?.names ?? []), piece.name], count: (same?.count ?? 0) + 1, ...row });
  }
  return [...rows.values()].sort((one, other) => other.length * other.width - one.length * one.width);
}

const quoted = (text: string): string => (/[",\n\r]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text);

/**
 * The cut list as comma-separated values, with units in the first line, lengths in millimetres.
 *
 * @validity as the rows
 * @source own derivation: rfc4180 section 2
 * @example cutListCsv(cutList(box)) // 'piece,count,length (mm),…'
 */
export function cutListCsv(rows: readonly CutListRow[]): string {
  const head = ['piece', 'count', 'length (mm)', 'width (mm)', 'thickness (mm)', 'board', 'grain', 'edges', 'cutouts'];
  const lines = rows.map(({ names, count, length, width, thickness, board, grained, edges, cutouts }) => [
    [...new Set(names)].join(' + '),
    String(count),
    ...[length, width, thickness].map(millimetres),
    board,
    grained ? 'along the length' : 'none',
    edges.join('; '),
    cutouts.join('; '),
  ]);
  return `${[head, ...lines].map((line) => line.map(quoted).join(',')).join('\r\n')}\r\n`;
}
