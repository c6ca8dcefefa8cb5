import { coilRise } from './coil-rise.js';
import type { Heard, HeardBox, HeardLimit } from './heard.js';
import { semitoneOf } from './notes.js';

/** Whether a vent may be heard: below every published onset, between them, above all. */
export type Verdict = 'quiet' | 'doubtful' | 'noisy';

/** How a piece keeps one limit at a drive. Times in s. */
export interface Kept {
  readonly name: string;
  /** 1 where it is just kept. */
  readonly mostUsed: number;
  readonly mostAt: number;
  readonly times: number;
  readonly passedFor: number;
  readonly firstPassed?: number;
}

/** A note that moves the air in the vent, and for how long it may be heard and is heard, s. */
export interface Note {
  readonly semitone: number;
  readonly doubtful: number;
  readonly noisy: number;
}

/** What a box does with a piece at a drive. */
export interface BoxAccount {
  readonly called: string;
  readonly short: string;
  readonly lumpedError: number;
  readonly limits: readonly Kept[];
  /** Left out of a box without a vent. */
  readonly noise?: {
    readonly lasts: Readonly<Record<Verdict, number>>;
    readonly notes: readonly Note[];
    readonly quiet: Kept;
    readonly noisy: Kept;
    /** The tone where it is noisiest, Hz. */
    readonly worst: number;
  };
  /** Of the loudest slice, dB at 1 m in half space. */
  readonly level: number;
  readonly travel: number;
  readonly airSpeed?: number;
  /** Rise of the coil over time, K; left out where Pe is unknown. */
  readonly rise?: Float64Array;
}

/** What a limit may be passed by in rounding. */
export const ROUNDING = 1e-9;
const isPassed = (used: number) => used > 1 + ROUNDING;
const greatest = (column: ArrayLike<number> | undefined): number => {
  let most = 0;
  for (let i = 0; i < (column?.length ?? 0); i++) most = Math.max(most, column![i]!);
  return most;
};

const isNoise = ({ name }: { readonly name: string }) => name === 'quiet vent' || name === 'noisy vent';

/** How long a slice lasts: the last one may be shorter. */
const lastsOf =
  ({ slice, duration }: Heard) =>
  (i: number) =>
    Math.min(slice, duration - i * slice);

function keptOf({ name, used }: HeardLimit, drive: number, slice: number, lasts: (i: number) => number): Kept {
  let [mostUsed, most, times, passedFor, first] = [0, 0, 0, 0, -1];
  for (let i = 0, was = false; i < used.length; i++) {
    const now = drive * used[i]!;
    if (now > mostUsed) [mostUsed, most] = [now, i];
    const passed = isPassed(now);
    if (passed) {
      passedFor += lasts(i);
      if (!was) times++;
      if (first < 0) first = i;
    }
    was = passed;
  }
  return { name, mostUsed, mostAt: most * slice, times, passedFor, ...(first >= 0 && { firstPassed: first * slice }) };
}

/** Of each slice. */
export function verdicts({ limits }: HeardBox, drive: number): readonly Verdict[] | undefined {
  const [low, high] = ['quiet vent', 'noisy vent'].map((name) => limits.find((limit) => limit.name === name)?.used);
  if (!low || !high) return undefined;
  return Array.from(low, (used, i) =>
    isPassed(drive * high[i]!) ? 'noisy' : isPassed(drive * used) ? 'doubtful' : 'quiet',
  );
}

function noiseOf(box: HeardBox, drive: number, heard: Heard, kept: readonly Kept[]): BoxAccount['noise'] {
  const each = verdicts(box, drive);
  const [quiet, noisy] = ['quiet vent', 'noisy vent'].map((name) => kept.find((one) => one.name === name));
  if (!each || !quiet || !noisy) return undefined;
  const lastsAt = lastsOf(heard);
  const lasts = { quiet: 0, doubtful: 0, noisy: 0 };
  const notes = new Map<number, { semitone: number; doubtful: number; noisy: number }>();
  each.forEach((verdict, i) => {
    const long = lastsAt(i);
    lasts[verdict] += long;
    if (verdict === 'quiet' || !(box.tone[i]! > 0)) return;
    const semitone = semitoneOf(box.tone[i]!);
    const note = notes.get(semitone) ?? { semitone, doubtful: 0, noisy: 0 };
    note[verdict] += long;
    notes.set(semitone, note);
  });
  const worst = box.tone[Math.round(noisy.mostAt / heard.slice)] ?? 0;
  const sorted = [...notes.values()].sort((a, b) => b.noisy - a.noisy || b.doubtful - a.doubtful);
  return { lasts, notes: sorted, quiet, noisy, worst };
}

/** A box at a drive: what a sine of full scale is given, V rms. */
export function boxAccount(box: HeardBox, drive: number, heard: Heard): BoxAccount {
  const { called, short, lumpedError, limits, peak, rms } = box;
  const kept = limits.map((limit) => keptOf(limit, drive, heard.slice, lastsOf(heard)));
  const noise = noiseOf(box, drive, heard, kept);
  const heat = limits.find(({ name }) => name === 'heat')?.greatestRms;
  return {
    called,
    short,
    lumpedError,
    limits: kept.filter((one) => !isNoise(one)),
    ...(noise && { noise }),
    level: 20 * Math.log10((drive * greatest(rms.pressure)) / 20e-6),
    travel: drive * greatest(peak.displacement),
    ...(peak.ventAirSpeed && { airSpeed: drive * greatest(peak.ventAirSpeed) }),
    ...(heat &&
      rms.current && {
        rise: coilRise(
          rms.current.map((amperes) => ((drive * amperes) / heat) ** 2),
          heard.slice,
        ),
      }),
  };
}
