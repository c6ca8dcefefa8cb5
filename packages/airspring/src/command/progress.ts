import type { Progress } from '../search/search.js';

/** Work reports its progress each time that this many ms have passed. */
const PATIENCE = 1000;

/** Reports how far the work has come: one line for each second that it takes. */
export function progressLines(write: (line: string) => void, now: () => number = () => performance.now()): Progress {
  let last = now();
  return ({ what, count, of, doing = 'searching' }) => {
    if (now() - last < PATIENCE) return;
    last = now();
    write(`still ${doing}: ${what} ${count} of ${of}\n`);
  };
}
