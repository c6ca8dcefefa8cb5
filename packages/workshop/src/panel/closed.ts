import type { Fault } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import { type Face, faces } from '@airspring/core/space';
import { axisOf, isFar } from './box-edges.js';
import type { BoxOfPanels } from './panel-box-input.js';
import { type Piece, sides } from './piece.js';
import { wallOf } from './wall.js';

type Place = readonly [number, number, number];

const inwards = (outer: readonly number[], face: Face, at: Place): number =>
  isFar(face) ? outer[axisOf(face)]! - at[axisOf(face)]! : at[axisOf(face)]!;

/** Whether a place in the box is in the board of a piece; holes do not count. */
function isIn(outer: readonly number[], recess: number, piece: Piece, at: Place): boolean {
  const { least, greatest } = piece.place;
  for (let k = 0; k < 3; k++) if (at[k]! < least[k]! || at[k]! > greatest[k]!) return false;
  if (piece.face === undefined) return true;
  const depth = inwards(outer, piece.face, at) - recess;
  for (const side of sides) {
    const { meets, cuts } = piece.edges[side];
    for (const cut of cuts) {
      const along = inwards(outer, meets as Face, at);
      if (cut.form === 'bevel') {
        if (along < depth * Math.tan(cut.angle)) return false;
      } else if (along > cut.from && along < cut.from + cut.width && depth > piece.thickness - cut.depth) return false;
    }
  }
  return true;
}

/** The levels along an axis between which nothing changes but along a slope. */
function levelsOn(box: BoxOfPanels, pieces: readonly Piece[], axis: number): number[] {
  const edge = box.outer[axis]!;
  const levels = [0, edge];
  for (const { place, face, thickness, edges } of pieces) {
    levels.push(place.least[axis]!, place.greatest[axis]!);
    for (const { meets, cuts } of Object.values(edges)) {
      for (const cut of cuts) {
        if (cut.form === 'bevel') continue;
        const from = (one: Face, ...at: number[]) => {
          if (axisOf(one) === axis) levels.push(...at.map((length) => (isFar(one) ? edge - length : length)));
        };
        from(meets as Face, cut.from, cut.from + cut.width);
        from(face as Face, wallOf(box, face as Face).recess + thickness - cut.depth);
      }
    }
  }
  const sorted = levels.filter((at) => at >= 0 && at <= edge).sort((a, b) => a - b);
  // Between levels that are equal but for rounding there is no place to look at.
  return sorted.filter((at, i) => i === 0 || at - sorted[i - 1]! > NANOMETRE);
}

/** Where in a cell is looked: uneven parts, so that no place lies in the plane of a mitre of equal boards. */
const looks: readonly Place[] = [
  [0.31, 0.47, 0.73],
  [0.83, 0.59, 0.21],
  [0.13, 0.89, 0.41],
];

/** A fault where the panels do not fill the walls everywhere once: with joints that do not go together at a corner. */
export function gapsOf(box: BoxOfPanels, pieces: readonly Piece[]): Fault[] {
  const levels = [0, 1, 2].map((axis) => levelsOn(box, pieces, axis));
  const walls = faces.map((face) => wallOf(box, face));
  const middles = (axis: number, part: number) =>
    levels[axis]!.slice(1).map((to, i) => levels[axis]![i]! + part * (to - levels[axis]![i]!));
  for (const [a, b, c] of looks) {
    for (const x of middles(0, a)) {
      for (const y of middles(1, b)) {
        for (const z of middles(2, c)) {
          const at: Place = [x, y, z];
          const solid = faces.some((face, i) => {
            const { recess, panel, layer } = walls[i]!;
            const depth = inwards(box.outer, face, at) - recess;
            return depth > 0 && depth < panel + layer;
          });
          const found = pieces.filter((piece) =>
            isIn(box.outer, piece.name === piece.face ? wallOf(box, piece.face).recess : 0, piece, at),
          );
          if (found.length === Number(solid)) continue;
          const near = faces.filter((face, i) => {
            const { recess, panel, layer } = walls[i]!;
            return inwards(box.outer, face, at) < recess + panel + layer;
          });
          const what = found.length > 1 ? `${found.map(({ name }) => name).join(' and ')} overlap` : 'a gap';
          const remedy = 'Use joints that go together at this corner, or let another panel cover.';
          const expected = 'panels that fill the walls everywhere once';
          return [{ code: 'inconsistent', path: 'box.joints', got: `${what} at ${near.join(', ')}`, expected, remedy }];
        }
      }
    }
  }
  return [];
}
