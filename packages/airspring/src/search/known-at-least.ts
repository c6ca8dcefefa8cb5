import type { Point } from '../kind/box-kind.js';
import type { Demand } from './demand.js';

/** Number of demands that are kept, and places for them: a power of 2, and never full. */
const MOST = 300_000;
const FIRST_PLACES = 1 << 12;
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
  let places = 0;
  let rows = new Float64Array(0);
  let count = 0;
  const key = new Float64Array(axes);
  const bits = new Uint32Array(key.buffer);
  const hash = (): number => {
    let mixed = 0;
    for (let i = 0; i < bits.length; i++) mixed = Math.imul(mixed ^ bits[i]!, 0x9e3779b1) ^ (mixed >>> 15);
    return (mixed ^ (mixed >>> 13)) >>> 0;
  };
  /** Where the row of the key stands, or would stand: an empty row has no net volume. */
  function rowOf(): number {
    for (let place = hash() & (places - 1); ; place = (place + 1) & (places - 1)) {
      const at = place * width;
      if (rows[at] === 0) return at;
      let i = 0;
      while (i < axes && rows[at + i] === key[i]) i++;
      if (i === axes) return at;
    }
  }
  function grow(): void {
    const before = rows;
    places = Math.max(FIRST_PLACES, 2 * places);
    rows = new Float64Array(places * width);
    for (let at = 0; at < before.length; at += width) {
      if (before[at] === 0) continue;
      for (let i = 0; i < axes; i++) key[i] = before[at + i]!;
      const row = rowOf();
      for (let i = 0; i < width; i++) rows[row + i] = before[at + i]!;
    }
  }
  let last = -1;
  function write(row: number, isExact: 0 | 1, demand: Demand): void {
    let at = row + axes;
    rows[at++] = isExact;
    rows[at++] = demand.cutoff;
    rows[at++] = demand.rise;
    rows[at++] = demand.travel;
    rows[at++] = demand.current;
    rows[at++] = demand.voltage;
    for (let k = 0; k < loads; k++) rows[at++] = demand.loads[k]!;
  }
  function atLeast(point: Point, out: Demand): boolean {
    if (2 * count >= places) grow();
    for (let i = 0; i < axes; i++) key[i] = point[i]!;
    const row = rowOf();
    last = row;
    if (rows[row] === 0) {
      found(point, out);
      if (count === MOST) last = -1;
      else {
        count++;
        rows.set(key, row);
        write(row, 0, out);
      }
      return false;
    }
    let at = row + axes;
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
    if (last >= 0) write(last, 1, demand);
  };
  return { atLeast, keep };
}
