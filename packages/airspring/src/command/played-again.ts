import type { TimelineAccount } from '@airspring/transient/timeline';

/** A piece played again at another level. */
export interface PlayedAgain {
  /** How many times as great the drive was. */
  readonly louder: number;
  /** The most that was used of any limit, and of which. */
  readonly mostUsed: number;
  readonly limit: string;
}

/** An onset of noise is no limit: a vent is then told to be doubtful or noisy. */
export const isNoise = ({ name }: { readonly name: string }): boolean => name === 'quiet vent' || name === 'noisy vent';

/** How near to its limit the most used one comes, and how often that is tried. */
const NEAR = 0.01;
const MOST_PLAYS = 6;

const worstOf = ({ limits }: TimelineAccount) =>
  limits.filter((one) => !isNoise(one)).reduce((a, b) => (b.mostUsed > a.mostUsed ? b : a));

/**
 * Finds the level at which the most used limit is just kept, by playing again: each time along the straight line, in decibels, through
 * the last two levels. `undefined` where nothing limits the piece, and where a level that is tried cannot be played.
 */
export async function playedAgain(
  first: TimelineAccount,
  playAt: (factor: number) => Promise<TimelineAccount> | undefined,
): Promise<PlayedAgain | undefined> {
  if (first.limits.every(isNoise) || worstOf(first).mostUsed === 0) return undefined;
  let [at, worst, slope] = [1, worstOf(first), 1];
  for (let play = 0; play < MOST_PLAYS && Math.abs(worst.mostUsed - 1) > NEAR; play++) {
    const next = at * worst.mostUsed ** (-1 / slope);
    const played = await playAt(next);
    if (played === undefined) return undefined;
    const then = worstOf(played);
    const found = Math.log(then.mostUsed / worst.mostUsed) / Math.log(next / at);
    // A stop can make it very flat, a vent steep.
    slope = Math.min(4, Math.max(0.25, Number.isFinite(found) ? found : 1));
    [at, worst] = [next, then];
  }
  return { louder: at, mostUsed: worst.mostUsed, limit: worst.name };
}
