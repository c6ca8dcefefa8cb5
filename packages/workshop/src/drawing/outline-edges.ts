import type { ShapedPanel } from '@airspring/core/space';
import { type At, type Callout, type Label, line, type Shape } from './drawing.js';

/** A board of a box that is no cuboid, m: its outer surface, and what is known of its cuts and of the boards around it. */
export type OutlinedBoard = Pick<ShapedPanel, 'name' | 'thickness' | 'outline'> &
  Partial<Pick<ShapedPanel, 'face' | 'inner' | 'blank' | 'angles' | 'meets' | 'bent' | 'opening'>>;

/** Corners that turn by less are those of an arc, rad. */
const ARC = (16 * Math.PI) / 180;
/** Edges nearer to each other than this are one, m. */
const NEAR = 1e-6;

/** The corners at which an outline turns sharply. */
export function cornersOf(outline: readonly At[]): readonly At[] {
  return outline.filter(([x, y], i) => {
    const [before, after] = [outline.at(i - 1)!, outline[(i + 1) % outline.length]!];
    const turn = Math.atan2(after[1] - y, after[0] - x) - Math.atan2(y - before[1], x - before[0]);
    return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) > ARC;
  });
}

/** The edges of the surfaces of a rectangular board that lie within its blank: of the outer one a step that is seen, of the inner one behind. */
export function edgeLines(outer: readonly At[], inner: readonly At[], blank: At): Shape[] {
  return [outer, inner].flatMap((surface, i) =>
    surface.flatMap((from, side) => {
      const to = surface[(side + 1) % surface.length]!;
      const k = Math.abs(from[0] - to[0]) < NEAR ? 0 : 1;
      if (from[k] < NEAR || from[k] > blank[k] - NEAR) return [];
      const ends = ([0, blank[1 - k]!] as const).map((at): At => (k === 0 ? [from[0], at] : [at, from[1]]));
      return [line(i === 0 ? 'pocket' : 'inside', ends[0]!, ends[1]!)];
    }),
  );
}

type Edge = 'left' | 'right' | 'bottom' | 'top';

const degrees = (angle: number): string => String(Number(((angle * 180) / Math.PI).toFixed(1)));

/** The runs of sides with one neighbour: their first side, and how many they are. */
function runsOf(meets: readonly string[]): { readonly first: number; readonly count: number; readonly name: string }[] {
  const runs: { first: number; count: number; name: string }[] = [];
  meets.forEach((name, i) => {
    const last = runs.at(-1);
    if (last && last.name === name) last.count++;
    else runs.push({ first: i, count: 1, name });
  });
  return runs;
}

/** Whether a board lies over the edges of those around it, and not between them. */
export const isCover = ({ outline, angles = [], bent }: OutlinedBoard): boolean =>
  bent === undefined && (outline.length !== 4 || angles.every((angle) => Math.abs(angle - Math.PI / 2) < NEAR));

/** What stands along the edges of a board: what it meets there, and at which angle it is cut. `led` tells from which heights lines lead to the right. */
export function edgeWords(
  board: OutlinedBoard,
  outline: readonly At[],
  blank: At,
  ends: readonly (readonly number[])[],
  led: readonly number[],
): { readonly labels: Label[]; readonly callouts: Callout[] } {
  const { angles = [], meets = [] } = board;
  const callouts: Callout[] = [];
  const along: { readonly text: string; readonly beside: Edge; readonly from: At; readonly to: At }[] = [];
  const covers = isCover(board);
  for (const { first, count, name } of runsOf(meets)) {
    if (name === '') continue;
    const angle = angles[first] ?? Math.PI / 2;
    const square = Math.abs(angle - Math.PI / 2) < NEAR;
    const text = square ? `${covers ? 'covers' : 'against'} ${name}` : `${name}: cut at ${degrees(angle)}°`;
    const [from, to] = [outline[first]!, outline[(first + count) % outline.length]!];
    const middle: At =
      count === 1
        ? [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
        : // All around, the line leads from the side at which the words stand.
          count === outline.length
          ? outline.reduce((best, corner) => (corner[0] > best[0] + NEAR ? corner : best))
          : outline[(first + Math.floor(count / 2)) % outline.length]!;
    const beside = count > 1 ? undefined : sideOf(from, to, outline);
    if (beside === undefined) {
      callouts.push({ at: middle, text });
      continue;
    }
    along.push({ text, beside, from, to });
  }
  const labels = along.map(({ text, beside, from, to }): Label => {
    const k = beside === 'left' || beside === 'right' ? 1 : 0;
    // A length or a line that ends on the way must not cross the words.
    const crossed = [...ends[k]!, ...(beside === 'right' ? [...led, ...callouts.map(({ at }) => at[1])] : [])];
    const place = clearOf([Math.min(from[k], to[k]), Math.max(from[k], to[k])], crossed);
    const edge = { left: 0, right: blank[0], bottom: 0, top: blank[1] }[beside];
    return { at: k === 1 ? [edge, place] : [place, edge], text, size: 'small', beside, clear: true };
  });
  return { labels, callouts };
}

/** Where along an edge its words stand: in the middle, or where no length that ends on the way crosses them. */
function clearOf([from, to]: readonly [number, number], crossed: readonly number[]): number {
  const at = (share: number) => from + share * (to - from);
  const away = (share: number) => Math.min(Infinity, ...crossed.map((one) => Math.abs(one - at(share))));
  return at([0.5, 0.8, 0.2, 0.65, 0.35].reduce((best, one) => (away(one) > away(best) + NEAR ? one : best)));
}

/** The edge of the rectangle around a figure that a side lies on. */
function sideOf(from: At, to: At, outline: readonly At[]): Edge | undefined {
  const names = [
    ['left', 'right'],
    ['bottom', 'top'],
  ] as const;
  for (const k of [0, 1] as const) {
    if (Math.abs(from[k] - to[k]) > NEAR) continue;
    const all = outline.map((at) => at[k]);
    if (from[k] < Math.min(...all) + NEAR) return names[k][0];
    if (from[k] > Math.max(...all) - NEAR) return names[k][1];
  }
  return undefined;
}
