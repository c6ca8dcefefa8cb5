import { si, type Time } from '@airspring/core/quantity';
import type { Judge } from './slice.js';

/** How a piece keeps one limit. */
export interface LimitAccount {
  readonly name: string;
  readonly basis: string;
  /** The most that is used of it: 1 where it is just kept. */
  readonly mostUsed: number;
  /** When the slice begins in which the most is used. */
  readonly mostAt: Time;
  /** When it is passed for the first time; left out where it is kept. */
  readonly firstPassed?: Time;
  /** How often it is passed: slices that follow each other are one time. */
  readonly times: number;
  /** How long these slices last in all. */
  readonly passedFor: Time;
  /** The drive may be this many times as great until the limit is just kept; below 1 it must be less. Left out for silence. */
  readonly louder?: number;
}

/** What a system did in a whole piece. A plain record. */
export interface TimelineAccount {
  readonly duration: Time;
  /** Greatest magnitude of each output, and its rms value; SI. */
  readonly peak: Readonly<Record<string, number>>;
  readonly rms: Readonly<Record<string, number>>;
  readonly limits: readonly LimitAccount[];
  /** Samples for which a nonlinear simulation found no solution. */
  readonly unsolved: number;
}

/** What is counted for each limit, in plain numbers. */
export interface Counted {
  mostUsed: number;
  mostAt: number;
  firstPassed: number | undefined;
  times: number;
  passedFor: number;
  isPassed: boolean;
}

export const counted = (): Counted => ({
  mostUsed: 0,
  mostAt: 0,
  firstPassed: undefined,
  times: 0,
  passedFor: 0,
  isPassed: false,
});

/** What a limit may be passed by in rounding: a recording of full scale just keeps the voltage of its amplifier. */
const ROUNDING = 1e-9;

/** Counts a slice in. */
export function countIn(one: Counted, used: number, from: number, duration: number): void {
  if (used > one.mostUsed) {
    one.mostUsed = used;
    one.mostAt = from;
  }
  const isPassed = used > 1 + ROUNDING;
  if (isPassed) {
    one.firstPassed ??= from;
    one.passedFor += duration;
    if (!one.isPassed) one.times += 1;
  }
  one.isPassed = isPassed;
}

export function limitAccount({ name, basis }: Judge, one: Counted): LimitAccount {
  const { mostUsed, firstPassed } = one;
  return {
    name,
    basis,
    mostUsed,
    mostAt: si('time', one.mostAt),
    ...(firstPassed !== undefined && { firstPassed: si('time', firstPassed) }),
    times: one.times,
    passedFor: si('time', one.passedFor),
    ...(mostUsed > 0 && { louder: 1 / mostUsed }),
  };
}
