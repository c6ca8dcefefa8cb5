import type { Point } from '../kind/point.js';
import { copyOf, type Demand } from './demand.js';

/** Number of demands that are kept. */
const MOST = 20_000;

/**
 * The same demands, each worked out once: a walk comes back to a sound in boxes of other widths, and another wish asks for the
 * boxes of the one before. It pays where a network is solved at each frequency, as one with a line is. `axes` is the number of
 * values of a point on which its sound depends.
 */
export function remembered(
  demandOf: (point: Point, out: Demand) => void,
  axes: number,
): (point: Point, out: Demand) => void {
  const known = new Map<string, Demand>();
  return (point, out) => {
    let key = '';
    for (let i = 0; i < axes; i++) key += `${point[i]} `;
    const found = known.get(key);
    if (found === undefined) {
      if (known.size === MOST) known.clear();
      demandOf(point, out);
      known.set(key, copyOf(out));
      return;
    }
    const { loads, loadsBelow, ...numbers } = found;
    Object.assign(out, numbers);
    out.loads.set(loads);
    for (let k = 0; k < loadsBelow.length; k++) out.loadsBelow[k]!.set(loadsBelow[k]!);
  };
}
