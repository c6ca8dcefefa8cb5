import type { Fault } from '@airspring/core/fault';
import { decimalText, NANOMETRE } from '@airspring/core/quantity';
import type { ReadStanding } from './fields.js';

interface Opening {
  readonly path: string;
  readonly called: string;
  readonly place: NonNullable<ReadStanding['standing']['drivers']>[number];
  readonly diameter: number;
}

const mm = (metres: number): string => `${decimalText(metres * 1e3, 4)} mm`;

/** Openings of one panel that would cut into each other where a brief places them. */
export function faultsOfPlaces({ drivers = [], vents = [] }: ReadStanding['standing'], cutout: number): Fault[] {
  const openings: Opening[] = [
    ...drivers.map((place, i) => ({ path: `drivers[${i}]`, called: 'cutout', place, diameter: cutout })),
    ...vents.flatMap(({ place, hole, diameter }, i) =>
      place ? [{ path: `vents[${i}].place`, called: 'hole', place, diameter: hole ?? diameter }] : [],
    ),
  ];
  return openings.flatMap((one, i) =>
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
          expected: `at least ${mm(least)}, so that the ${one.called} of ${mm(one.diameter)} and the ${other.called} of ${mm(other.diameter)} do not meet`,
          remedy: 'Measure both places again.',
        },
      ];
    }),
  );
}
