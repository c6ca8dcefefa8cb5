import { airSpeedLimit } from '@airspring/core/limit';
import type { Probe } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import type { Point, Variant } from './box-kind.js';

interface OneOpening {
  readonly element: string;
  readonly of?: string;
}

/** The openings of a kind of box through which its air moves: one, or several of the same area. */
interface Openings {
  /** Their elements in the topology of the family, and what tells several of them apart in its probes. */
  readonly openings: readonly [OneOpening, ...OneOpening[]];
  /** What a reader calls one of them: 'vent'. */
  readonly called: string;
  /** Where a brief limits its air speed. */
  readonly path: string;
  readonly airSpeedPeak: number;
  /** Where the air is fastest, m². */
  readonly area: (point: Point) => number;
}

/** What a variant says of a limit on the air speed in its openings. */
export const airSpeedIn = ({
  openings,
  called,
  path,
  airSpeedPeak,
  area,
}: Openings): Pick<Variant, 'load' | 'limits' | 'wishes'> => {
  const [first, ...others] = openings;
  const flow = ({ element }: OneOpening): Probe => ({ of: 'flow', element });
  const limit = airSpeedLimit(si('airSpeedRms', airSpeedPeak / Math.SQRT2));
  const what = `air speed in the ${called}, peak`;
  return {
    load: {
      probes: [flow(first), ...others.map(flow)],
      capacity: (point) => area(point) * airSpeedPeak,
      what,
      meaning: 'airSpeed',
      perReading: (point) => 1 / area(point),
      below: `the air in the ${called}`,
    },
    limits: () =>
      openings.map(({ of }) =>
        of === undefined ? limit : { ...limit, name: `${limit.name} ${of}`, probe: `${limit.probe} ${of}` },
      ),
    wishes: [
      {
        path,
        what,
        quantity: 'airSpeedPeak',
        unit: 'm/s',
        allowed: airSpeedPeak,
        sense: 'at most',
        easedByLevel: true,
        needed: (point, load) => load / area(point),
      },
    ],
  };
};
