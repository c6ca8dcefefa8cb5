import type { Block } from './solids.js';

/** A range of shifts, open at both ends: `range[0]` to `range[1]`. */
export type Range = Float64Array;

const middle = (block: Block, axis: number) => (block.low[axis]! + block.high[axis]!) / 2;

/** The radius of a cylinder, measured along an axis across it. */
const radiusOf = (block: Block) => {
  const across = block.axis === 0 ? 1 : 0;
  return (block.high[across]! - block.low[across]!) / 2;
};

/** Distance of a point from an interval. */
const beyond = (at: number, low: number, high: number) => Math.max(low - at, at - high, 0);

const crosses = (a: Block, b: Block, axis: number) => a.low[axis]! < b.high[axis]! && b.low[axis]! < a.high[axis]!;

/**
 * By which shifts of `a` along an axis does it overlap `b`? Writes the range and says whether there is one. Both solids
 * are convex, so it is one range; touching is no overlap. This function answers every question of this folder: do
 * two solids overlap, how far is it to the next solid, where does a solid just touch?
 */
export function overlappingShifts(a: Block, b: Block, along: number, range: Range): boolean {
  return a.axis >= 0 && b.axis >= 0 && a.axis !== b.axis ? crossed(a, b, along, range) : parallel(a, b, along, range);
}

/**
 * Two prisms with a common axis i. The cross-section of a cylinder is a point, rounded by its radius; that of a cuboid is a
 * rectangle without rounding. They overlap where the points or rectangles are nearer than the sum of the roundings.
 */
function parallel(a: Block, b: Block, along: number, range: Range): boolean {
  const i = Math.max(a.axis, b.axis, 0);
  const roundA = a.axis < 0 ? 0 : radiusOf(a);
  const roundB = b.axis < 0 ? 0 : radiusOf(b);
  const rounding = roundA + roundB;
  const one = along === i ? (i + 1) % 3 : along;
  const other = 3 - i - one;
  const gapOther = coreGap(a, b, other, roundA, roundB);
  if (rounding === 0 ? !crosses(a, b, other) : gapOther >= rounding) return false;
  if (along === i) {
    if (rounding === 0 ? !crosses(a, b, one) : further(gapOther, coreGap(a, b, one, roundA, roundB), rounding)) {
      return false;
    }
    range[0] = b.low[i]! - a.high[i]!;
    range[1] = b.high[i]! - a.low[i]!;
    return true;
  }
  if (!crosses(a, b, i)) return false;
  const reach = Math.sqrt((rounding - gapOther) * (rounding + gapOther));
  range[0] = b.low[one]! + roundB - (a.high[one]! - roundA) - reach;
  range[1] = b.high[one]! - roundB - (a.low[one]! + roundA) + reach;
  return true;
}

const further = (x: number, y: number, than: number) => x * x + y * y >= than * than;

/** Gap along an axis between the unrounded cross-sections. */
const coreGap = (a: Block, b: Block, axis: number, roundA: number, roundB: number) =>
  Math.max(b.low[axis]! + roundB - (a.high[axis]! - roundA), a.low[axis]! + roundA - (b.high[axis]! - roundB), 0);

/**
 * Two cylinders at right angles: a along i, b along j, o the third axis. A plane across o at height h cuts a in a strip
 * of half width $\sqrt{R_a^2 - (h - o_a)^2}$ along i, and b likewise; the strips overlap where the axis of a comes as
 * near to the interval of b along j, $x_a$, and the axis of b as near to the interval of a along i, $x_b$, as these
 * widths allow: $|h - o_a| < \sqrt{R_a^2 - x_a^2}$ and $|h - o_b| < \sqrt{R_b^2 - x_b^2}$. Such a height exists when
 * $|o_a - o_b| < \sqrt{R_a^2 - x_a^2} + \sqrt{R_b^2 - x_b^2}$. Each direction of shift solves this for its own term.
 */
function crossed(a: Block, b: Block, along: number, range: Range): boolean {
  const i = a.axis;
  const j = b.axis;
  const o = 3 - i - j;
  const Ra = radiusOf(a);
  const Rb = radiusOf(b);
  const apart = middle(b, o) - middle(a, o);
  const xa = beyond(middle(a, j), b.low[j]!, b.high[j]!);
  const xb = beyond(middle(b, i), a.low[i]!, a.high[i]!);
  if (along !== j && xa >= Ra) return false;
  if (along !== i && xb >= Rb) return false;
  if (along === o) {
    const reach = Math.sqrt((Ra - xa) * (Ra + xa)) + Math.sqrt((Rb - xb) * (Rb + xb));
    range[0] = apart - reach;
    range[1] = apart + reach;
    return true;
  }
  if (along === j) {
    const left = Math.max(0, Math.abs(apart) - Math.sqrt((Rb - xb) * (Rb + xb)));
    if (left >= Ra) return false;
    const reach = Math.sqrt((Ra - left) * (Ra + left));
    range[0] = b.low[j]! - middle(a, j) - reach;
    range[1] = b.high[j]! - middle(a, j) + reach;
    return true;
  }
  const left = Math.max(0, Math.abs(apart) - Math.sqrt((Ra - xa) * (Ra + xa)));
  if (left >= Rb) return false;
  const reach = Math.sqrt((Rb - left) * (Rb + left));
  range[0] = middle(b, i) - reach - a.high[i]!;
  range[1] = middle(b, i) + reach - a.low[i]!;
  return true;
}

const scratch = new Float64Array(2);

/** Do two solids overlap? Touching is not overlap. */
export const overlap = (a: Block, b: Block): boolean =>
  overlappingShifts(a, b, 0, scratch) && scratch[0]! < 0 && scratch[1]! > 0;
