import { airSpeedLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import type { Point, Variant } from './box-kind.js';

/** The one opening of a kind of box through which its air moves. */
interface Opening {
  /** Its element in the topology of the family. */
  readonly element: string;
  /** What a reader calls it: 'vent'. */
  readonly called: string;
  /** Where a brief limits its air speed. */
  readonly path: string;
  readonly airSpeedPeak: number;
  /** Where the air is fastest, m². */
  readonly area: (point: Point) => number;
}

/** What a variant says of a limit on the air speed in its opening. */
export const airSpeedIn = ({
  element,
  called,
  path,
  airSpeedPeak,
  area,
}: Opening): Pick<Variant, 'load' | 'limits' | 'wishes'> => {
  const what = `air speed in the ${called}, peak`;
  return {
    load: {
      probe: { of: 'flow', element },
      capacity: (point) => area(point) * airSpeedPeak,
      what,
      meaning: 'airSpeed',
      perReading: (point) => 1 / area(point),
      below: `the air in the ${called}`,
    },
    limits: () => [airSpeedLimit(si('airSpeedRms', airSpeedPeak / Math.SQRT2))],
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
