import type { Fault } from '@airspring/core/fault';
import { decimalText, NANOMETRE } from '@airspring/core/quantity';
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

const openingText = ({ called, diameter, assumed = '' }: Opening): string =>
  `the ${called} of ${mm(diameter)}${assumed}`;

const mm = (metres: number): string => `${decimalText(metres * 1e3, 4)} mm`;

/**
 * The hole of a vent. Where it was not measured, a tube is taken to fill it, and its wall to be the usual one where that was not
 * measured either. A vent as short as its panel is a hole: there is no tube in it.
 */
export function holeOf({ hole, diameter, wall = WALL, length }: VentHole, panelThickness: number): number {
  return hole ?? (length > panelThickness ? outerOf({ diameter, wall }) : diameter);
}

function assumedOf({ hole, diameter, wall = WALL }: VentHole, diameterOfHole: number): { readonly assumed?: string } {
  if (hole !== undefined || diameterOfHole === diameter) return {};
  return { assumed: ` (assumed: ${mm(diameter)} inside, and a wall of ${mm(wall)})` };
}

/** Openings that would cut into the panels beside their own, in a box of these outer sizes. */
function beyondPanel({ path, place, ...opening }: Opening, outer: Sizes, panelThickness: number): Fault[] {
  const edges = panelOf(place.face, outer);
  return (['across', 'up'] as const).flatMap((name, i): Fault[] => {
    const least = panelThickness + opening.diameter / 2;
    const most = edges[i]! - least;
    if (place[name] >= least - NANOMETRE && place[name] <= most + NANOMETRE) return [];
    const room = `the ${place.face} panel is ${mm(edges[i]! - 2 * panelThickness)} wide inside in this direction`;
    return [
      {
        code: 'inconsistent',
        path: `standing.${path}.${name}`,
        got: mm(place[name]),
        expected:
          most < least - NANOMETRE
            ? `room for ${openingText({ path, place, ...opening })}: ${room}`
            : `from ${mm(least)} to ${mm(most)}, so that ${openingText({ path, place, ...opening })} does not cut into the panels beside it`,
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
): Fault[] {
  const openings: Opening[] = [
    ...drivers.map((place, i) => ({ path: `drivers[${i}]`, called: 'cutout', place, diameter: cutout })),
    ...vents.flatMap((vent, i) => {
      const diameter = holeOf(vent, panelThickness);
      const { place } = vent;
      const path = `vents[${i}].place`;
      return place ? [{ path, called: 'hole', place, diameter, ...assumedOf(vent, diameter) }] : [];
    }),
  ];
  const beyond = outer ? openings.flatMap((one) => beyondPanel(one, outer, panelThickness)) : [];
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
          got: `${mm(apart)} from the centre of standing.${other.path}`,
          expected: `at least ${mm(least)}, so that ${openingText(one)} and ${openingText(other)} do not meet`,
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
