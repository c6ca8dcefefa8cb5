import { type Job, safeFromOf } from '../job/job.js';

/** How many frequencies the search looks at: in the run-up below the band, and in the band. */
export const BELOW = 20;
export const BAND = 44;

type Wanted = Job['wanted'];

/** Frequencies of the search: a run-up from a quarter of the lowest, then the band in which limits are judged, with both ends. */
export function searchGrid(wanted: Wanted): Float64Array {
  const from = safeFromOf(wanted);
  const inBand = (i: number) => from * (wanted.highest / from) ** (i / (BAND - 1));
  return Float64Array.from({ length: BELOW + BAND }, (_, i) => (i < BELOW ? belowAt(wanted, i) : inBand(i - BELOW)));
}

/** A frequency of the run-up; the one at `BELOW` is where the band begins. */
function belowAt(wanted: Wanted, i: number): number {
  const from = safeFromOf(wanted);
  const start = Math.min(from, wanted.lowest) / 4;
  return start * (from / start) ** (i / BELOW);
}
