import { NANOMETRE } from '@airspring/core/quantity';
import type { Outline } from '../outline/index.js';

/** What a solid covers of the section: a rectangle, or the disc in it. It is written again for each solid. */
export interface Cast {
  round: boolean;
  /** Least and greatest, across and then up. */
  readonly low: [number, number];
  readonly high: [number, number];
}

/** A section that is asked about millions of solids: plain loops over numbers, which allocate nothing. */
export interface Profile {
  readonly holds: (cast: Cast) => boolean;
  /** How far a cast inside can move along axis 0 or 1, up or down. */
  readonly way: (cast: Cast, axis: 0 | 1, isUp: boolean) => number;
}

const BEHIND = 1e-6;

export function profileOf(outline: Outline): Profile {
  const count = outline.length;
  /** The first corner again at the end. */
  const corners = [0, 1].map((k) => Float64Array.from([...outline, outline[0]!], (corner) => corner[k]!)) as [
    Float64Array,
    Float64Array,
  ];
  const [xs, ys] = corners;

  /** Whether a point is inside, by the crossings of a ray. */
  function isInside(x: number, y: number): boolean {
    let inside = false;
    for (let i = 0; i < count; i++) {
      const [ay, by] = [ys[i]!, ys[i + 1]!];
      if (ay > y !== by > y && x < xs[i]! + ((y - ay) / (by - ay)) * (xs[i + 1]! - xs[i]!)) inside = !inside;
    }
    return inside;
  }

  /** Whether a side comes nearer to a point than a radius. */
  function isNear(x: number, y: number, radius: number): boolean {
    for (let i = 0; i < count; i++) {
      const [ax, ay] = [xs[i]!, ys[i]!];
      const [dx, dy] = [xs[i + 1]! - ax, ys[i + 1]! - ay];
      const part = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
      const [ex, ey] = [ax + part * dx - x, ay + part * dy - y];
      if (ex * ex + ey * ey < radius * radius) return true;
    }
    return false;
  }

  /** Whether a side passes through a rectangle: the part of it between both pairs of edges has a length. */
  function isCrossed(left: number, right: number, bottom: number, top: number): boolean {
    for (let i = 0; i < count; i++) {
      const [ax, ay] = [xs[i]!, ys[i]!];
      const [dx, dy] = [xs[i + 1]! - ax, ys[i + 1]! - ay];
      let from = 0;
      let to = 1;
      if (dx === 0) {
        if (ax <= left || ax >= right) continue;
      } else {
        const [one, two] = [(left - ax) / dx, (right - ax) / dx];
        from = Math.max(from, Math.min(one, two));
        to = Math.min(to, Math.max(one, two));
      }
      if (dy === 0) {
        if (ay <= bottom || ay >= top) continue;
      } else {
        const [one, two] = [(bottom - ay) / dy, (top - ay) / dy];
        from = Math.max(from, Math.min(one, two));
        to = Math.min(to, Math.max(one, two));
      }
      if (from < to) return true;
    }
    return false;
  }

  function holds({ round, low, high }: Cast): boolean {
    const [x, y] = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
    if (round) return isInside(x, y) && !isNear(x, y, (high[0] - low[0]) / 2 - NANOMETRE);
    // A flat one may lie in a side, where rounding decides on which side its middle is.
    if (!isInside(x, y) && !isNear(x, y, NANOMETRE)) return false;
    return !isCrossed(low[0] + NANOMETRE, high[0] - NANOMETRE, low[1] + NANOMETRE, high[1] - NANOMETRE);
  }

  function way({ round, low, high }: Cast, axis: 0 | 1, isUp: boolean): number {
    const other = axis === 0 ? 1 : 0;
    const sign = isUp ? 1 : -1;
    // Along u, the way, and across it, v.
    const us = corners[axis];
    const vs = corners[other];
    const front = isUp ? high[axis] : -low[axis];
    const v = (low[other] + high[other]) / 2;
    const half = (high[other] - low[other]) / 2;
    const centre = round ? front - half : front;
    const reach = Math.max(0, half - NANOMETRE);
    // Corners run counter-clockwise, so that the direction of a side tells which way it faces: only those that face the cast stop it.
    const facing = (axis === 0) === isUp ? 1 : -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      const av = vs[i]!;
      const bv = vs[i + 1]!;
      if ((bv - av) * facing <= 0) continue;
      const from = Math.max(Math.min(av, bv), v - reach);
      const to = Math.min(Math.max(av, bv), v + reach);
      if (from > to) continue;
      const au = sign * us[i]!;
      const slope = (sign * us[i + 1]! - au) / (bv - av);
      let free: number;
      if (round) {
        // A disc touches a line where its normal points at it, or an end of the side.
        const at = Math.min(to, Math.max(from, v - (slope * half) / Math.sqrt(1 + slope * slope)));
        free = au + slope * (at - av) - centre - Math.sqrt(Math.max(0, half * half - (at - v) * (at - v)));
      } else {
        free = au + slope * ((slope > 0 ? from : to) - av) - centre;
      }
      if (free > -BEHIND && free < least) least = free;
    }
    return least;
  }
  return { holds, way };
}
