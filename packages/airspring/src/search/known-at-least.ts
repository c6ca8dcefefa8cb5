import type { Point } from '../kind/point.js';
import type { Demand } from './demand.js';

/** Number of demands that are kept, and of those for which there is room at first: a power of 2. */
const MOST = 300_000;
const FIRST_ROOM = 1 << 11;
/** Numbers of a demand besides its loads. */
const NUMBERS = 5;

/**
 * The least demands of some boxes, each worked out once: surveys for other wishes come back to the same lattice, and so do variants
 * that differ in their room alone. `axes` is the number of values of a point on which its sound depends. `atLeast` says whether it
 * gives the demand itself; `keep` puts that in the place of the last one that was asked for.
 */
export function knownAtLeast(found: (point: Point, out: Demand) => void, axes: number, loads: number) {
  /** Values of the point, whether the demand is exact, and its numbers. */
  const width = axes + 1 + NUMBERS + loads;
  /** Rows in the order of their finding, the first without a demand. Places by hash are at most half full: they hold numbers of rows. */
  let rows = new Float64Array(0);
  let places = new Uint32Array(0);
  let count = 0;
  const key = new Float64Array(axes);
  const bits = new Uint32Array(key.buffer);
  const hash = (): number => {
    let mixed = 0;
    for (let i = 0; i < bits.length; i++) mixed = Math.imul(mixed ^ bits[i]!, 0x9e3779b1) ^ (mixed >>> 15);
    return (mixed ^ (mixed >>> 13)) >>> 0;
  };
  /** The place of the key: it holds the number of its row, or 0. */
  function placeOf(): number {
    for (let place = hash() & (places.length - 1); ; place = (place + 1) & (places.length - 1)) {
      const at = places[place]! * width;
      if (at === 0) return place;
      let i = 0;
      while (i < axes && rows[at + i] === key[i]) i++;
      if (i === axes) return place;
    }
  }
  function grow(): void {
    const before = rows;
    places = new Uint32Array(Math.max(2 * FIRST_ROOM, 2 * places.length));
    rows = new Float64Array((1 + places.length / 2) * width);
    rows.set(before);
    for (let row = 1; row <= count; row++) {
      for (let i = 0; i < axes; i++) key[i] = rows[row * width + i]!;
      places[placeOf()] = row;
    }
  }
  /** Where the numbers of the last row stand that was asked for. */
  let last = -1;
  function write(isExact: 0 | 1, demand: Demand): void {
    let at = last;
    rows[at++] = isExact;
    rows[at++] = demand.cutoff;
    rows[at++] = demand.rise;
    rows[at++] = demand.travel;
    rows[at++] = demand.current;
    rows[at++] = demand.voltage;
    for (let k = 0; k < loads; k++) rows[at++] = demand.loads[k]!;
  }
  function atLeast(point: Point, out: Demand): boolean {
    if (2 * count >= places.length) grow();
    for (let i = 0; i < axes; i++) key[i] = point[i]!;
    const place = placeOf();
    const row = places[place]!;
    if (row === 0) {
      found(point, out);
      last = -1;
      if (count < MOST) {
        places[place] = ++count;
        rows.set(key, count * width);
        last = count * width + axes;
        write(0, out);
      }
      return false;
    }
    last = row * width + axes;
    let at = last;
    const isExact = rows[at++] === 1;
    out.cutoff = rows[at++]!;
    out.rise = rows[at++]!;
    out.travel = rows[at++]!;
    out.current = rows[at++]!;
    out.voltage = rows[at++]!;
    for (let k = 0; k < loads; k++) out.loads[k] = rows[at++]!;
    return isExact;
  }
  const keep = (demand: Demand): void => {
    if (last >= 0) write(1, demand);
  };
  return { atLeast, keep };
}
