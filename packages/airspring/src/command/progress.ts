import type { Progress } from '../search/search.js';

/** A search reports its progress each time that this many ms have passed. */
const PATIENCE = 1000;

/** Reports how far a search has come: one line for each second that it takes. */
export function progressLines(write: (line: string) => void, now: () => number = () => performance.now()): Progress {
  let last = now();
  return ({ what, count, of }) => {
    if (now() - last < PATIENCE) return;
    last = now();
    write(`still searching: ${what} ${count} of ${of}\n`);
  };
}
