import { NANOMETRE } from '@airspring/core/quantity';
import type { Solid } from '@airspring/core/space';

/** A quarter of a circle: the centre line of an elbow, from its start `along` one axis into another. */
export interface Quarter {
  readonly start: readonly number[];
  readonly radius: number;
  readonly along: { readonly axis: number; readonly sign: number };
  readonly into: { readonly axis: number; readonly sign: number };
}

/** Least step along the centre line, rad: less than a micrometre of distance is lost between two of them. */
const STEP = 1e-3;
const AXES = ['x', 'y', 'z'] as const;

/** How far a point is from a solid, m; 0 within it. */
function distance({ form, axis, least, greatest }: Solid, point: readonly number[]): number {
  let [along, radial] = [0, 0];
  for (let k = 0; k < 3; k++) {
    const middle = (least[k]! + greatest[k]!) / 2;
    const half = (greatest[k]! - least[k]!) / 2;
    const from = Math.abs(point[k]! - middle);
    if (form === 'cylinder' && AXES[k] !== axis) radial += from ** 2;
    else along += Math.max(0, from - half) ** 2;
  }
  if (form !== 'cylinder') return Math.sqrt(along);
  const across = axis === 'x' ? 1 : 0;
  const round = (greatest[across]! - least[across]!) / 2;
  return Math.hypot(Math.sqrt(along), Math.max(0, Math.sqrt(radial) - round));
}

/**
 * Whether a tube around a quarter of a circle meets one of some solids. From each point of its centre line it goes on by what is
 * free there: no point farther on that is nearer is passed over.
 */
export function elbowMeets(solids: readonly Solid[], { start, radius, along, into }: Quarter, tube: number): boolean {
  return solids.some((solid) => {
    for (let angle = 0, last = false; ; ) {
      const point = [...start];
      point[along.axis]! += along.sign * radius * Math.sin(angle);
      point[into.axis]! += into.sign * radius * (1 - Math.cos(angle));
      const free = distance(solid, point) - tube;
      if (free < -NANOMETRE) return true;
      if (last) return false;
      angle = Math.min(Math.PI / 2, angle + Math.max(STEP, free / radius));
      last = angle === Math.PI / 2;
    }
  });
}

/**
 * How far a point of the cuboid around a quarter of a tube may be from the tube itself, m: its corners inside and outside the bend.
 * What is smaller than a solid by that on all sides meets the cuboid only where the solid meets the tube.
 */
export function cuboidBeyondElbow(radius: number, tube: number): number {
  const outside = Math.SQRT2 * (radius + tube) - radius;
  return Math.hypot(Math.max(outside, radius), tube) - tube;
}
