import { type Job, safeFromOf } from '../job/job.js';
import type { Variant } from '../kind/box-kind.js';
import { crossingAt, grazedAbove } from './crossing.js';
import { BELOW } from './frequencies.js';

/** What a box asks of its parts and the amplifier to play the wanted level throughout the band, and what it gives. */
export interface Demand {
  /** Lowest frequency above which the response stays within the wanted fall, Hz; accurate to 0.01 Hz. */
  cutoff: number;
  /** Lowest frequency down to which, in addition, travel, heat and the amplifier hold at the wanted level, Hz. */
  depth: number;
  /** Greatest rise of the response over its reference up to the end of the band, dB. */
  rise: number;
  /** Greatest travel divided by Xmax. */
  travel: number;
  /** Greatest I² Re divided by Pe, as a ratio of amplitudes. */
  heat: number;
  /** Greatest drive, V rms. */
  voltage: number;
  /** Greatest current, A rms. */
  current: number;
  /** Greatest peaks of the quantities that the kind limits. */
  readonly loads: Float64Array;
  /** Least impedance in the audible bass, Ω; worked out only where the brief states a least load. */
  leastImpedance: number;
  /** The frequencies of the run-up in rising order; the last one is where the band begins. */
  runUp: Float64Array;
  /** The same as `loads` below the band, at those frequencies. */
  readonly loadsBelow: readonly Float64Array[];
}

const NONE = new Float64Array(0);

export const emptyDemand = ({ loads = [] }: Pick<Variant, 'loads'>): Demand => ({
  cutoff: 0,
  depth: 0,
  rise: 0,
  travel: 0,
  heat: 0,
  voltage: 0,
  current: 0,
  loads: new Float64Array(loads.length),
  leastImpedance: Infinity,
  runUp: NONE,
  loadsBelow: loads.map(() => new Float64Array(BELOW + 1)),
});

/** The same numbers, in columns of their own. */
export const copyOf = (demand: Demand): Demand => ({
  ...demand,
  loads: demand.loads.slice(),
  loadsBelow: demand.loadsBelow.map((column) => column.slice()),
});

/** How deep a box plays with one of its kind's own limits; never deeper than the other limits allow, nor than `depth`. */
export function depthWith(
  { cutoff, loads, loadsBelow, runUp }: Demand,
  k: number,
  depth: number,
  capacity: number,
  wanted: Job['wanted'],
): number {
  const from = safeFromOf(wanted);
  const loadBelow = loadsBelow[k]!;
  if (loads[k]! > capacity || cutoff > from) return Math.max(depth, from);
  for (let i = BELOW - 1; i >= 0; i--) {
    const low = runUp[i]!;
    const high = runUp[i + 1]!;
    if (high <= depth) break;
    const a = loadBelow[i]! / capacity;
    const b = loadBelow[i + 1]! / capacity;
    if (a > 1) return Math.max(depth, crossingAt(low, high, a, b));
    if (i + 2 > BELOW) continue;
    const above = grazedAbove(a, b, loadBelow[i + 2]! / capacity);
    if (above !== undefined) return Math.max(depth, high * (high / low) ** above);
  }
  return depth;
}
