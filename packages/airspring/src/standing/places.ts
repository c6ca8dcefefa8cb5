import type { Fault } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import { panelOf } from './across.js';
import type { ReadStanding } from './fields.js';
import { outerOf, WALL } from './tube.js';

interface Opening {
  readonly path: string;
  readonly called: string;
  readonly place: NonNullable<ReadStanding['standing']['drivers']>[number];
  readonly diameter: number;
  /** Where the diameter comes from, if nobody measured it. */
  readonly assumed?: string;
}

/** Edges of a box. */
type Sizes = Parameters<typeof panelOf>[1];

interface VentHole {
  readonly diameter: number;
  readonly length: number;
  readonly wall?: number | undefined;
  readonly hole?: number | undefined;
}

type Says = (metres: number) => string;

const openingText = ({ called, diameter, assumed = '' }: Opening, says: Says): string =>
  `the ${called} of ${says(diameter)}${assumed}`;

/**
 * The hole of a vent. Where it was not measured, a tube is taken to fill it, and its wall to be the usual one where that was not
 * measured either. A vent as short as its panel is a hole: there is no tube in it.
 */
export function holeOf({ hole, diameter, wall = WALL, length }: VentHole, panelThickness: number): number {
  return hole ?? (length > panelThickness ? outerOf({ diameter, wall }) : diameter);
}

function assumedOf(
  { hole, diameter, wall = WALL }: VentHole,
  diameterOfHole: number,
  says: Says,
): { readonly assumed?: string } {
  if (hole !== undefined || diameterOfHole === diameter) return {};
  return { assumed: ` (assumed: ${says(diameter)} inside, and a wall of ${says(wall)})` };
}

/** Openings that would cut into the panels beside their own, in a box of these outer sizes. */
function beyondPanel(opening: Opening, outer: Sizes, panelThickness: number, says: Says): Fault[] {
  const { path, place } = opening;
  const edges = panelOf(place.face, outer);
  return (['across', 'up'] as const).flatMap((name, i): Fault[] => {
    const least = panelThickness + opening.diameter / 2;
    const most = edges[i]! - least;
    if (place[name] >= least - NANOMETRE && place[name] <= most + NANOMETRE) return [];
    const room = `the ${place.face} panel is ${says(edges[i]! - 2 * panelThickness)} wide inside in this direction`;
    return [
      {
        code: 'inconsistent',
        path: `standing.${path}.${name}`,
        got: says(place[name]),
        expected:
          most < least - NANOMETRE
            ? `room for ${openingText(opening, says)}: ${room}`
            : `from ${says(least)} to ${says(most)}, so that ${openingText(opening, says)} does not cut into the panels beside it`,
        remedy: 'Correct the place, the diameter, or the sizes of the box.',
      },
    ];
  });
}

/** Openings that would cut into the panels beside their own, and openings of one panel that would cut into each other where a brief places them. */
export function faultsOfPlaces(
  { drivers = [], vents = [], panelThickness }: ReadStanding['standing'],
  cutout: number,
  outer: Sizes | undefined,
  says: Says,
): Fault[] {
  const openings: Opening[] = [
    ...drivers.map((place, i) => ({ path: `drivers[${i}]`, called: 'cutout', place, diameter: cutout })),
    ...vents.flatMap((vent, i) => {
      const diameter = holeOf(vent, panelThickness);
      const { place } = vent;
      const path = `vents[${i}].place`;
      return place ? [{ path, called: 'hole', place, diameter, ...assumedOf(vent, diameter, says) }] : [];
    }),
  ];
  const beyond = outer ? openings.flatMap((one) => beyondPanel(one, outer, panelThickness, says)) : [];
  const meeting = openings.flatMap((one, i) =>
    openings.slice(0, i).flatMap((other): Fault[] => {
      if (one.place.face !== other.place.face) return [];
      const apart = Math.hypot(one.place.across - other.place.across, one.place.up - other.place.up);
      const least = (one.diameter + other.diameter) / 2;
      if (apart >= least - NANOMETRE) return [];
      return [
        {
          code: 'inconsistent',
          path: `standing.${one.path}`,
          got: `${says(apart)} from the centre of standing.${other.path}`,
          expected: `at least ${says(least)}, so that ${openingText(one, says)} and ${openingText(other, says)} do not meet`,
          remedy:
            (one.assumed ?? other.assumed)
              ? 'Measure the hole (standing.vents[].hole) and both places.'
              : 'Measure both places again.',
        },
      ];
    }),
  );
  return [...beyond, ...meeting];
}
