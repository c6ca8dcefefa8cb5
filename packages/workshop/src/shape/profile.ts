import { clearanceAt, type Outline, type PlanePoint } from '../outline/index.js';

/** What a solid covers of the section: a disc in its square, or a rectangle. */
export interface Cast {
  readonly round: boolean;
  readonly low: PlanePoint;
  readonly high: PlanePoint;
}

/** A section that is asked about many solids. */
export interface Profile {
  readonly holds: (cast: Cast) => boolean;
  /** How far a cast inside can move along axis 0 or 1, up or down. */
  readonly way: (cast: Cast, axis: 0 | 1, isUp: boolean) => number;
}

/** Lengths that are no more than rounding, m; and how far a cast may seem to be in a side: one beyond that lies behind it. */
const NEAR = 1e-9;
const BEHIND = 1e-6;

export function profileOf(outline: Outline): Profile {
  const sides = outline.map((corner, i) => [...corner, ...outline[(i + 1) % outline.length]!] as const);

  /** Whether a side passes through a rectangle: the part of it between both pairs of edges has a length. */
  const passes = ([ax, ay, bx, by]: (typeof sides)[number], low: PlanePoint, high: PlanePoint): boolean => {
    let from = 0;
    let to = 1;
    for (const [a, b, least, greatest] of [
      [ax, bx, low[0] + NEAR, high[0] - NEAR],
      [ay, by, low[1] + NEAR, high[1] - NEAR],
    ] as const) {
      if (a === b) {
        if (a <= least || a >= greatest) return false;
        continue;
      }
      const [one, two] = [(least - a) / (b - a), (greatest - a) / (b - a)];
      from = Math.max(from, Math.min(one, two));
      to = Math.min(to, Math.max(one, two));
    }
    return from < to;
  };

  const middle = ({ low, high }: Cast): PlanePoint => [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];

  function holds(cast: Cast): boolean {
    const { round, low, high } = cast;
    const clearance = clearanceAt(outline, middle(cast));
    if (round) return clearance > (high[0] - low[0]) / 2 - NEAR;
    if (!(clearance > -NEAR)) return false;
    for (let i = 0; i < sides.length; i++) if (passes(sides[i]!, low, high)) return false;
    return true;
  }

  function way({ round, low, high }: Cast, axis: 0 | 1, isUp: boolean): number {
    const other = axis === 0 ? 1 : 0;
    const sign = isUp ? 1 : -1;
    // Along u, the way, and across it, v.
    const front = isUp ? high[axis] : -low[axis];
    const [v, half] = [(low[other] + high[other]) / 2, (high[other] - low[other]) / 2];
    const centre = round ? front - half : front;
    const reach = Math.max(0, half - NEAR);
    let least = Number.POSITIVE_INFINITY;
    for (const side of sides) {
      const [au, av, bu, bv] = [sign * side[axis]!, side[other]!, sign * side[2 + axis]!, side[2 + other]!];
      // Corners run counter-clockwise, so that the direction of a side tells which way it faces: only those that face the cast stop it.
      if ((axis === 0) === isUp ? bv <= av : bv >= av) continue;
      const [from, to] = [Math.max(Math.min(av, bv), v - reach), Math.min(Math.max(av, bv), v + reach)];
      if (from > to) continue;
      const slope = (bu - au) / (bv - av);
      // A disc touches a line where its normal points at it, or an end of the side.
      const at = round
        ? Math.min(to, Math.max(from, v - (slope * half) / Math.hypot(1, slope)))
        : slope > 0
          ? from
          : to;
      const free = au + slope * (at - av) - centre - (round ? Math.sqrt(Math.max(0, half ** 2 - (at - v) ** 2)) : 0);
      if (free > -BEHIND && free < least) least = free;
    }
    return least;
  }
  return { holds, way };
}
