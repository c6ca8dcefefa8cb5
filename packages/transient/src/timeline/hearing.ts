import { refuse } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { type Counted, counted, countIn, limitAccount, type TimelineAccount } from './account.js';
import { type Collected, collect, collectedOf, collectStroke, endSlice } from './collected.js';
import type { Judge, Slice } from './slice.js';

/** A piece of sound that is being heard. */
export interface Hearing<Motion> {
  readonly motion: Motion;
  readonly filter: readonly Float64Array[];
  readonly collected: Collected;
  readonly counted: readonly Counted[];
  /** Samples so far: of the slice, before the slice, and those without a solution. */
  readonly samples: { inSlice: number; before: number; unsolved: number };
}

/** The output that is followed for the travel of the air in a vent; of several, each has a name after it. */
export const SPEED = 'ventAirSpeed';
export const isAirSpeed = (output: string): boolean => output === SPEED || output.startsWith(`${SPEED} `);

/** How slices are cut and judged. */
export interface Slicing {
  readonly outputs: readonly string[];
  readonly judges: readonly Judge[];
  /** Samples of a slice, s between them, and the samples over which a mean fades. */
  readonly length: number;
  readonly interval: number;
  readonly memory: number;
}

/** Everything that is heard of a simulation, from its start to the account. */
export function slicer({ outputs, judges, length, interval, memory }: Slicing) {
  const speeds = [...outputs.keys()].filter((i) => isAirSpeed(outputs[i]!));
  const named = (values: Float64Array) => Object.fromEntries(outputs.map((output, i) => [output, values[i]!]));

  function start<Motion>(motion: Motion, filter: readonly Float64Array[]): Hearing<Motion> {
    const samples = { inSlice: 0, before: 0, unsolved: 0 };
    return {
      motion,
      filter,
      collected: collectedOf(outputs.length, speeds.length),
      counted: judges.map(counted),
      samples,
    };
  }

  /** Ends the slice that is being heard. */
  function finish({ collected, counted: counts, samples }: Hearing<unknown>): Slice {
    const count = samples.inSlice;
    refuseOdd(collected.sum, samples.before);
    const reset = endSlice(collected, count, memory);
    const { peak, sum, lasting, strokes } = collected;
    const airTravel = new Float64Array(outputs.length);
    speeds.forEach((output, k) => {
      airTravel[output] = strokes[k]![2]! / 2;
    });
    const measured = { peak, lasting, airTravel };
    const used = judges.map((judge) => judge.used(measured));
    const [from, duration] = [samples.before * interval, count * interval];
    used.forEach((share, i) => countIn(counts[i]!, share, from, duration));
    const rms = named(sum.map((total) => Math.sqrt(total / count)));
    const slice = { from, duration, peak: named(peak), rms, used };
    reset();
    samples.before += count;
    samples.inSlice = 0;
    return slice;
  }

  /** Refuses sums that are not finite: no limit would count as passed by them. */
  function refuseOdd(sums: Float64Array, before: number): void {
    const odd = sums.findIndex((sum) => !Number.isFinite(sum));
    if (odd < 0) return;
    const expected = `finite numbers in the slice that begins at ${before * interval} s`;
    const remedy = odd === 0 ? 'Correct the drive.' : 'Correct the drive or the simulation.';
    const path = odd === 0 ? 'drive' : `timeline.outputs.${outputs[odd]}`;
    refuse([{ code: 'not-finite', path, got: sums[odd], expected, remedy }]);
  }

  /** Takes a block of each output; hands back the slices that end in it. */
  function take(hearing: Hearing<unknown>, columns: readonly Float64Array[]): readonly Slice[] {
    const { collected, samples } = hearing;
    const count = columns[0]!.length;
    const slices: Slice[] = [];
    for (let from = 0; from < count; ) {
      const to = Math.min(count, from + length - samples.inSlice);
      columns.forEach((column, output) => collect(collected, output, column, from, to));
      speeds.forEach((output, k) => collectStroke(collected.strokes[k]!, columns[output]!, from, to, interval));
      samples.inSlice += to - from;
      from = to;
      if (samples.inSlice === length) slices.push(finish(hearing));
    }
    return slices;
  }

  function account({ collected, counted: counts, samples }: Hearing<unknown>): TimelineAccount {
    const heard = Math.max(1, samples.before);
    return {
      duration: si('time', samples.before * interval),
      peak: named(collected.wholePeak),
      rms: named(collected.wholeSum.map((total) => Math.sqrt(total / heard))),
      limits: judges.map((judge, i) => limitAccount(judge, counts[i]!)),
      unsolved: samples.unsolved,
    };
  }

  const end = (hearing: Hearing<unknown>) => (hearing.samples.inSlice > 0 ? [finish(hearing)] : []);
  return { start, take, end, account };
}
