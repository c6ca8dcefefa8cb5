import { type Plane, sliceOf } from '../mesh/index.js';
import { areaOf, type Outline } from '../outline/index.js';
import { sectionArea } from './cross-section.js';
import type { Flare } from './flare.js';
import { lineOf, type VentDrawing } from './vent-drawing.js';
import type { VentSolid } from './vent-solid.js';

/** The clear way through a vent: its areas in equal steps along the centre line, each at the middle of its step. */
export interface Airway {
  /** m */
  readonly length: number;
  /** m², as the solid has them. */
  readonly areas: Float64Array;
  /** m², as the drawing has them at the same places. */
  readonly drawn: Float64Array;
}

/** Default number of slices. */
const usualSlices = 120;

/**
 * The clear areas of a printed vent, measured on its solid: planes across the centre line cut the surface, and what the wall
 * encloses there is the air.
 *
 * @validity vents that `ventSolid` makes; a plane across one leg may cut others, which are left out
 * @throws InputError nothing of its own
 * @source own derivation: the area within the line in which a plane cuts the inner wall, by Green's theorem
 * @example airwayOf(vent).areas[100] // π (35 mm)², to rounding
 */
export function airwayOf({ mesh, drawing }: VentSolid, slices: number = usualSlices): Airway {
  const line = lineOf(drawing);
  const at = (i: number) => ((i + 0.5) * drawing.length) / slices;
  const areas = Float64Array.from({ length: slices }, (_, i) => clearArea(sliceOf(mesh, planeAt(line.frame(at(i))))));
  const drawn = Float64Array.from({ length: slices }, (_, i) => drawnArea(drawing, at(i)));
  return { length: drawing.length, areas, drawn };
}

const planeAt = ({ origin, x, y }: Plane): Plane => ({ origin, x, y });

/** Area of the hole around the origin of the plane; 0 where there is none. */
function clearArea(figures: readonly Outline[]): number {
  const hole = figures.find((figure) => areaOf(figure) < 0 && turnsAround(figure));
  return hole === undefined ? 0 : -areaOf(hole);
}

/** Whether a figure contains the origin: a ray from it meets an odd number of sides. */
function turnsAround(figure: Outline): boolean {
  let inside = false;
  for (const [i, [x, y]] of figure.entries()) {
    const [nextX, nextY] = figure[(i + 1) % figure.length]!;
    if (y > 0 !== nextY > 0 && x - (y * (nextX - x)) / (nextY - y) > 0) inside = !inside;
  }
  return inside;
}

/** Area of the drawing at a position along it, from its exact curves. */
function drawnArea({ section, length, outerFlare, innerFlare }: VentDrawing, along: number): number {
  const within = (flare: Flare | undefined, fromMouth: number) =>
    flare === undefined || fromMouth >= flare.depth ? 0 : wideningAt(flare, flare.depth - fromMouth);
  return sectionArea(section, Math.max(within(outerFlare, along), within(innerFlare, length - along)));
}

/** The widening of a flare at a distance from its throat, which never shrinks as t grows. */
function wideningAt({ curve }: Flare, distance: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (curve(middle)[0] < distance) low = middle;
    else high = middle;
  }
  return curve((low + high) / 2)[1];
}
