import { NANOMETRE } from '@airspring/core/quantity';
import type { Outline, PlanePoint } from '../outline/index.js';
import { BEVEL, GROOVE, outerLine, RIM, radiusOf, type TwoPartSizes } from './two-part-sizes.js';
import type { VentDrawing } from './vent-drawing.js';
import { ductLine, heightAt } from './vent-solid.js';

/** The flange, cut open along its middle: [along, distance from the middle], as seen from the outer face. */
export function flangeProfile({ clearance, rim, seat, sleeve, proud, end }: TwoPartSizes, radius: number): Outline {
  const slide = seat + clearance;
  return [
    [0, rim + clearance],
    [0, radius],
    [proud, radius],
    ...(sleeve > slide
      ? ([
          [proud, sleeve],
          [end, sleeve],
        ] as const)
      : []),
    [end, slide],
    [RIM + BEVEL, slide],
    [RIM, slide + BEVEL],
    [RIM, rim + clearance],
  ];
}

/** The wall of the tube: [along, distance from the inner surface], as seen from the outer face. */
export function tubeProfile(drawing: VentDrawing, { rim, seat, groove, grooveAt, cord, end }: TwoPartSizes): Outline {
  const radius = radiusOf(drawing);
  const half = (GROOVE * cord) / 2;
  const line = outerLine(drawing);
  const behind = line.filter(([along]) => along > end + NANOMETRE);
  const atEnd = heightAt(line, Math.min(end, drawing.length));
  const outside: PlanePoint[] = [
    [0, rim],
    [RIM, rim],
    [RIM, seat],
    [grooveAt - half, seat],
    [grooveAt - half, seat - groove],
    [grooveAt + half, seat - groove],
    [grooveAt + half, seat],
    [end, seat],
    // A seat as thick as the tube ends where the tube goes on.
    ...(radius + atEnd < seat - NANOMETRE ? [[end, radius + atEnd] as const] : []),
    ...behind.map(([along, offset]) => [along, radius + offset] as const),
  ];
  return [...ductLine(drawing), ...outside.reverse().map(([along, from]) => [along, from - radius] as const)];
}
