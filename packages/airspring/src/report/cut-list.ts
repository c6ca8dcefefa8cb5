import { type Fit, faces } from '@airspring/core/space';
import type { Hole, Panel } from '../answer.js';

/** The six panels with butt joints: front and back whole, top and bottom over their width, sides between. */
export function panelsOf([width, height, depth]: readonly [number, number, number], t: number): Panel[] {
  return [
    { name: 'front and back (width × height)', count: 2, length: width, width: height },
    { name: 'top and bottom (width × depth)', count: 2, length: width, width: depth - 2 * t },
    { name: 'sides (height × depth)', count: 2, length: height - 2 * t, width: depth - 2 * t },
  ];
}

/** Where the builder measures from, on a face across axis 0 width, 1 height, 2 depth. */
function holeOf(what: Hole['what'], face: Hole['face'], diameter: number, [x, y, z]: readonly number[]): Hole {
  const axis = faces.indexOf(face) >> 1;
  if (axis === 0) return { what, face, diameter, across: z as number, up: y as number, from: ['front', 'bottom'] };
  if (axis === 1) return { what, face, diameter, across: x as number, up: z as number, from: ['left', 'front'] };
  return { what, face, diameter, across: x as number, up: y as number, from: ['left', 'bottom'] };
}

/** Every hole of a box where driver and vents were placed. */
export const holesOf = ({ placement: { drivers, vent } }: Fit, cutout: number, tube: number): Hole[] => [
  ...drivers.flatMap(({ face, centres }) => centres.map((centre) => holeOf('driver', face, cutout, centre))),
  ...(vent?.centres.map((centre) => holeOf('vent', vent.face, tube, centre)) ?? []),
];
