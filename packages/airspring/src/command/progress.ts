import type { Progress } from '../search/search.js';

/** A search that takes longer says so, in ms; and again after each such time. */
const PATIENCE = 1000;

/** Tells how far a search is, once it has taken longer than a second: one line each second. */
export function progressLines(write: (line: string) => void, now: () => number = () => performance.now()): Progress {
  let last = now();
  return ({ what, count, of }) => {
    if (now() - last < PATIENCE) return;
    last = now();
    write(`still searching: ${what} ${count} of ${of}\n`);
  };
}
