import type { SpacePoint } from '../mesh/index.js';
import type { Outline } from '../outline/index.js';
import type { Frame } from './centre-line.js';
import { halfWidths } from './cross-section.js';
import { lineOf, type VentDrawing } from './vent-drawing.js';

/** Angle between two sections of a bend that are measured, rad: less than a micrometre is missed. */
const STEP = 4e-3;

const dot = (one: SpacePoint, other: SpacePoint): number => one[0] * other[0] + one[1] * other[1] + one[2] * other[2];

/**
 * The edges of the cuboid along the axes of a frame that just holds a swept wall, m. Its circles are true circles here, however
 * coarse the solid is.
 */
export function reachOf(drawing: VentDrawing, profile: Outline, seen: Pick<Frame, 'x' | 'y' | 'along'>): SpacePoint {
  const { section, wall } = drawing;
  const line = lineOf(drawing);
  const [wide, high] = halfWidths(section);
  const first = profile.reduce((least, [at]) => Math.min(least, at), Infinity);
  const last = profile.reduce((most, [at]) => Math.max(most, at), -Infinity);
  // Walls do not widen in a bend.
  const bent = line.arcs
    .filter(({ from, to }) => from > first && to < last)
    .flatMap(({ from, to, angle }) => {
      const count = Math.ceil(angle / STEP);
      return Array.from({ length: count + 1 }, (_, i) => [from + ((to - from) * i) / count, wall] as const);
    });
  const sections = [...profile, ...bent].map(([at, offset]) => ({ frame: line.frame(at), offset }));
  const along = (axis: SpacePoint): number => {
    let [least, most] = [Infinity, -Infinity];
    for (const { frame, offset } of sections) {
      const [x, y] = [Math.abs(dot(frame.x, axis)), Math.abs(dot(frame.y, axis))];
      const reach =
        section.form === 'round' ? (wide + offset) * Math.hypot(x, y) : (wide + offset) * x + (high + offset) * y;
      const middle = dot(frame.origin, axis);
      least = Math.min(least, middle - reach);
      most = Math.max(most, middle + reach);
    }
    return most - least;
  };
  return [along(seen.x), along(seen.y), along(seen.along)];
}
