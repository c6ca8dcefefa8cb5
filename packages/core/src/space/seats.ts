import { NANOMETRE } from '../quantity/nanometre.js';
import type { Layout } from './fit-input.js';
import { overlap } from './overlap.js';
import { arrangements, centreLimits, turn, type View } from './placement.js';
import type { RoundBody } from './round-body.js';
import type { Scene, Stand } from './scene.js';
import { compileMoves, MOST_PLACES, smaller } from './seat-moves.js';
import { isFar, span } from './solids.js';

/**
 * Compiles the places of all bodies. Each body is tried at the corners of its limits. Several bodies are also tried in the
 * middles, from the second one on where it touches one before it, and two bodies where one touches the vent in a corner.
 * `visit` is called when the stands are written. The search ends when `visit` returns true, or when `hopeless`, which is called
 * before each place, does. `corner` is the side that the first body takes on each axis of the view: 0 near, 1 far.
 *
 * For one body the corners are enough (see vent-places.ts). Several bodies may fit in other places where these fail. A place
 * that is found is valid. A refusal is not a proof, but random searches over hundreds of boxes support it.
 */
export function compileSeats(
  layout: Layout,
  view: View,
  scene: Scene,
  hopeless: () => boolean,
  besideVent: (stand: Stand, k: number, shifts: Float64Array) => number,
) {
  const { thickness, gap, edgeMargin, cutoutMargin, bodies } = layout;
  const { stands, walls } = scene;
  const firstStand = bodies.map((_, i) => bodies.slice(0, i).reduce((n, { opposed }) => n + (opposed ? 2 : 1), 0));
  const blocks = bodies.map(({ count }) => arrangements(count));
  const limits = bodies.map(() => [new Float64Array(2), new Float64Array(2)] as const);
  const halves = bodies.map(() => [0, 0, 0]);
  const places = bodies.map(
    (_, i) => new Float64Array(bodies.length === 1 && i === 0 && !walls ? 20 : 2 * MOST_PLACES),
  );
  const corner: [number, number, number] = [0, 0, 0];
  const anyHeld = bodies.some(({ held }) => held !== undefined);

  /** The limits of a centre along an axis of the view. */
  function limitsOf(k: number, behind: number, outside: number, limit: Float64Array): boolean {
    const fits = centreLimits(view.size[k]!, behind, outside, thickness, view.axes[k]!, limit);
    if (view.turned[k]) {
      const low = view.size[k]! - limit[1]!;
      limit[1] = view.size[k]! - limit[0]!;
      limit[0] = low;
    }
    return fits;
  }

  function write(stand: Stand, body: RoundBody, half: readonly number[], k: number, at: number): void {
    const behind = half[k]! + body.cutoutDiameter / 2;
    span(stand.block, k, at - behind, at + behind);
    // A single body meets no other frame.
    if (!stand.beside && stands.length === 1) return;
    const frame = half[k]! + body.outerDiameter / 2 + gap;
    span(stand.frame, k, at - frame, at + frame);
  }

  /** Writes the one place of a body that may not move, if it is within its limits. */
  function heldPlace(i: number, one: number, two: number): number {
    const at = places[i]!;
    for (const [side, k] of [one, two].entries()) {
      const axis = view.axes[k]!;
      const limit = limits[i]![side]!;
      at[side] = turn(view, k, bodies[i]!.held![axis]! - thickness[2 * axis]!);
      if (at[side]! < limit[0]! - NANOMETRE || at[side]! > limit[1]! + NANOMETRE) return 0;
    }
    return 1;
  }

  function put(i: number, s: number, one: number, two: number, first: number, second: number): void {
    write(stands[s]!, bodies[i]!, halves[i]!, one, first);
    write(stands[s]!, bodies[i]!, halves[i]!, two, second);
  }

  const { touches, touchVent, toWalls, withMargin } = compileMoves(
    layout,
    view,
    scene,
    limits,
    places,
    put,
    besideVent,
  );

  /** Whether a stand is clear of the earlier ones. */
  function free(s: number): boolean {
    for (let o = 0; o < s; o++) {
      const [stand, other] = [stands[s]!, stands[o]!];
      if (stand.inside && other.inside && overlap(smaller(stand.block, NANOMETRE), other.block)) return false;
      if (stand.face === other.face && overlap(smaller(stand.frame, gap + NANOMETRE), other.frame)) return false;
    }
    return true;
  }

  function seat(i: number, ventFace: number, alone: boolean, mirrored: number, visit: () => boolean): boolean {
    if (i === bodies.length) return visit();
    const body = bodies[i]!;
    const from = firstStand[i]!;
    const to = from + (body.opposed ? 2 : 1);
    for (let f = 0; f < body.faces.length; f++) {
      const face = body.faces[f]!;
      const axis = face >> 1;
      const normal = view.axes[0] === axis ? 0 : view.axes[1] === axis ? 1 : 2;
      if (mirrored >= 0 && axis !== mirrored) continue;
      const one = normal === 0 ? 1 : 0;
      const two = 3 - normal - one;
      const room = view.size[normal]!;
      let reaches = 0;
      for (let s = from; s < to; s++) reaches += Math.max(0, body.depth - thickness[s === from ? face : face ^ 1]!);
      if (reaches > room + NANOMETRE) continue;
      for (let s = from; s < to; s++) {
        const stand = stands[s]!;
        stand.face = s === from ? face : face ^ 1;
        const reach = Math.min(Math.max(0, body.depth - thickness[stand.face]!), room);
        const far = isFar(stand.face) !== view.turned[normal];
        span(stand.block, normal, far ? room - reach : 0, far ? room : reach);
        // Thick enough to be made smaller by the gap on all sides.
        span(stand.frame, normal, -1 - gap, gap);
        stand.block.axis = body.count === 1 ? normal : -1;
        stand.frame.axis = stand.block.axis;
        stand.inside = reach > 0;
        stand.beside = stand.face === ventFace;
        if (s === from) corner[normal] = far ? 1 : 0;
      }
      for (let r = 0; r < blocks[i]!.length; r++) {
        const columns = blocks[i]![r]![0];
        const rows = blocks[i]![r]![1];
        const half = halves[i]!;
        const pitch = body.outerDiameter + gap;
        const columnsOn = view.axes[one]! < view.axes[two]! ? one : two;
        half[columnsOn] = ((columns - 1) * pitch) / 2;
        half[one + two - columnsOn] = ((rows - 1) * pitch) / 2;
        const behind = body.cutoutDiameter / 2 + cutoutMargin;
        const outside = body.outerDiameter / 2 + Math.max(edgeMargin, body.edgeMargin ?? 0);
        const a = limits[i]![0];
        const b = limits[i]![1];
        if (!limitsOf(one, half[one]! + behind, half[one]! + outside, a)) continue;
        if (!limitsOf(two, half[two]! + behind, half[two]! + outside, b)) continue;
        for (let s = from; s < to; s++) {
          stands[s]!.columns = columns;
          stands[s]!.rows = rows;
        }
        const at = places[i]!;
        const corners = alone && !body.held ? 1 : 0;
        if (corners === 1) {
          at[0] = (a[0]! + a[1]!) / 2;
          at[1] = (b[0]! + b[1]!) / 2;
        }
        for (let c = 0; c < 4; c++) {
          at[2 * (corners + c)] = a[c & 1]!;
          at[2 * (corners + c) + 1] = b[c >> 1]!;
        }
        let n = corners + 4;
        if (stands.length > 1 || walls) {
          for (let c = 0; c < 9; c++) {
            const [x, y] = [c % 3, Math.floor(c / 3)];
            if (x !== 1 && y !== 1) continue;
            at[2 * n] = a[0]! + (x / 2) * (a[1]! - a[0]!);
            at[2 * n + 1] = b[0]! + (y / 2) * (b[1]! - b[0]!);
            n++;
          }
        }
        if (body.held) n = heldPlace(i, one, two);
        else if (walls) n = toWalls(walls, i, from, to, one, two, n);
        // Of three bodies these places would be tried in all their combinations, a thousand times as many.
        if (bodies.length === 2 && !alone && !body.held) n = touchVent(i, from, to, one, two, n);
        if (i > 0 && !body.held) n = touches(i, from, to, one, two, n);
        // The mirror image of a place that was tried need not be tried.
        const skip =
          i > 0 || alone || anyHeld || mirrors[view.axes[2]] === false || normal === 2 ? -1 : two === 2 ? 2 : 1;
        for (let p = 0; p < n; p++) {
          const c = p - corners;
          if (skip > 0 && c < 4 && (c & skip) !== 0) continue;
          if (i === 0) {
            corner[one] = c & 1;
            corner[two] = c >> 1;
          }
          if (hopeless()) return true;
          let clear = true;
          for (let s = from; s < to && clear; s++) {
            put(i, s, one, two, at[2 * p]!, at[2 * p + 1]!);
            clear = (s === 0 || free(s)) && (!walls || walls.holds(withMargin(bodies[i]!, stands[s]!)));
          }
          if (clear && seat(i + 1, ventFace, alone, -1, visit)) return true;
        }
      }
    }
    return false;
  }

  /** For each axis of the box, whether both panels across it are equal, so that what stands there may be mirrored. */
  const mirrors = [0, 1, 2].map((axis) => !walls && thickness[2 * axis] === thickness[2 * axis + 1]);
  return { seat, corner, mirrors, limitsOf };
}
