import { type Impossible, impossible } from '@airspring/core/fault';
import { reasonOf, told, type Words } from '../words/told.js';
import { distance, sidesOf } from './measures.js';
import { areaOf, type Outline, type PlanePoint } from './outline.js';
import { crossingOf } from './read-outline.js';

/** A figure within another. */
export interface Inset {
  readonly ok: true;
  readonly outline: Outline;
  /** For each corner of the figure around it, the place in `outline` of the corner that it has become. */
  readonly corners: readonly number[];
  /** Sides of the figure around it that are too short to have a side within. */
  readonly lost: readonly number[];
}

/** A side as a line: its direction, and how far it is from the origin to the left of it. */
interface Line {
  readonly side: number;
  readonly along: PlanePoint;
  readonly at: number;
}

/** The sine of an angle below which two sides count as one straight line. */
const STRAIGHT = 1e-9;

/** Where two lines cross; on a straight line, `corner` moved onto it. */
function crossing(one: Line, two: Line, corner: PlanePoint): PlanePoint | undefined {
  const [ax, ay] = one.along;
  const [bx, by] = two.along;
  const sine = ax * by - ay * bx;
  if (Math.abs(sine) > STRAIGHT) {
    return [(one.at * bx - two.at * ax) / sine, (one.at * by - two.at * ay) / sine];
  }
  if (Math.abs(one.at - two.at) > 1e-12 + STRAIGHT * Math.abs(one.at) || ax * bx + ay * by < 0) return undefined;
  const away = one.at - (ax * corner[1] - ay * corner[0]);
  return [corner[0] - ay * away, corner[1] + ax * away];
}

/** Panels that meet, in words. */
const meeting = (words: Words): Impossible => ({ ok: false, because: [reasonOf('panels-meet', words, 4)] });

/**
 * The figure within panels of given thickness along the sides of another one, with corners where the inner surfaces meet. A thickness
 * below zero leads outwards. A side that is shorter than its neighbours' panels need has none within.
 *
 * $$\mathbf n_i\cdot\mathbf p = d_i + t_i, \qquad \mathbf n_{i+1}\cdot\mathbf p = d_{i+1} + t_{i+1}$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $\mathbf p$ | m | corner within |
 * | $\mathbf n_i$, $d_i$ | m | inward normal of side i, and its distance from the origin |
 * | $t_i$ | m | thickness of its panel |
 *
 * @validity exact for flat panels; a figure that panels divide into two is impossible
 * @returns the figure within, or why the panels leave none
 * @source own geometry of straight lines
 * @example insetOf([[0, 0], [0.3, 0], [0.3, 0.2], [0, 0.2]], [0.018, 0.018, 0.018, 0.018]).ok // true
 */
export function insetOf(outline: Outline, thickness: readonly number[]): Inset | Impossible {
  const sides = sidesOf(outline);
  let lines = sides.map(([from, to], side): Line => {
    const length = distance(from, to);
    const along: PlanePoint = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    return { side, along, at: along[0] * from[1] - along[1] * from[0] + thickness[side]! };
  });
  const thick = told`panels of ${Math.max(...thickness)} leave nothing`;
  const none = meeting(told`In a figure of ${String(outline.length)} corners ${thick} between them.`);
  for (;;) {
    const count = lines.length;
    if (count < 3) return none;
    const corners: PlanePoint[] = [];
    for (let i = 0; i < count; i++) {
      const [before, line] = [lines[(i + count - 1) % count]!, lines[i]!];
      const corner = crossing(before, line, outline[line.side]!);
      if (corner === undefined) {
        // Opposite sides meet once those between them have no room; sides in one line differ in thickness.
        if (before.along[0] * line.along[0] + before.along[1] * line.along[1] < 0) return none;
        const text = `Sides ${before.side} and ${line.side} are in one line, and their inner surfaces do not meet. Give both the same thickness, or move a corner.`;
        return impossible('panels-do-not-meet', text);
      }
      corners.push(corner);
    }
    // The share of the thickness at which each side within would vanish; the one that does so first has no place.
    let first = -1;
    let least = 1;
    for (let i = 0; i < count; i++) {
      const { side, along } = lines[i]!;
      const [from, to] = [corners[i]!, corners[(i + 1) % count]!];
      const left = (to[0] - from[0]) * along[0] + (to[1] - from[1]) * along[1];
      const [outerFrom, outerTo] = sides[side]!;
      const share = distance(outerFrom, outerTo) / (distance(outerFrom, outerTo) - left);
      if (left <= 0 && share <= least) {
        least = share;
        first = i;
      }
    }
    if (first >= 0) {
      lines = lines.filter((_, i) => i !== first);
      continue;
    }
    if (areaOf(corners) <= 0 || crossingOf(corners) !== undefined) {
      return meeting(told`Between two parts of the figure ${thick}, or divide it.`);
    }
    const kept = lines.map(({ side }) => side);
    // A corner becomes the one at which the next side that is left begins.
    const placeOf = (side: number): number =>
      Math.max(
        0,
        kept.findIndex((one) => one >= side),
      );
    return {
      ok: true,
      outline: corners,
      corners: outline.map((_, corner) => (corner > kept.at(-1)! ? 0 : placeOf(corner))),
      lost: outline.flatMap((_, side) => (kept.includes(side) ? [] : [side])),
    };
  }
}
