import type { Fit } from '@airspring/core/space';
import { type Hole, holeAt, type Panel } from '../kind/build-record.js';

/** The six panels with butt joints: front and back cover the whole box, top and bottom its width, the sides stand between. */
export function panelsOf([width, height, depth]: readonly [number, number, number], t: number): Panel[] {
  return [
    { name: 'front and back (width × height)', count: 2, length: width, width: height },
    { name: 'top and bottom (width × depth)', count: 2, length: width, width: depth - 2 * t },
    { name: 'sides (height × depth)', count: 2, length: height - 2 * t, width: depth - 2 * t },
  ];
}

/** The holes for the drivers, where the drivers were placed. */
export const driverHoles = ({ placement: { drivers } }: Fit, cutout: number): Hole[] =>
  drivers.flatMap(({ face, centres }) => centres.map((centre) => holeAt('driver', face, cutout, centre)));
