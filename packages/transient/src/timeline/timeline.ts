import { refuse } from '@airspring/core/fault';
import type { Filter } from '@airspring/core/filter';
import type { Limit } from '@airspring/core/limit';
import {
  type Frequency,
  type FrequencyInput,
  given,
  optional,
  positive,
  readFields,
  si,
  type Time,
  type TimeInput,
} from '@airspring/core/quantity';
import { type NoiseOnset, noiseOnsets } from '@airspring/core/vent';
import { compileLinear, type Simulated } from '../simulation/index.js';
import { type Counted, counted, countIn, limitAccount, type TimelineAccount } from './account.js';
import { type Collected, collect, collectedOf, collectStroke, endSlice } from './collected.js';
import { filteredDrive } from './filtered-drive.js';
import { judgesOf, outputOf, VOLTAGE } from './limits-in-time.js';
import type { Slice } from './slice.js';
import { noiseJudges, type TimelineVent } from './vent-noise-in-time.js';

/** A simulation that goes on from block to block, as `compileNonlinear` makes one. */
export interface BlockSimulation<Motion> {
  readonly start: () => Motion;
  /** Fills a block of each output, and hands back how many of its samples have no solution. */
  readonly run: (motion: Motion, drive: Float64Array, out: readonly Float64Array[]) => { readonly unsolved: number };
}

/** How a system is simulated. */
export type Simulate<Motion> = (
  system: Simulated,
  options: { readonly sampleRate: Frequency; readonly outputs: readonly string[] },
) => BlockSimulation<Motion>;

/** What is judged over time, and how finely. */
export interface TimelineOptions<Motion> {
  readonly sampleRate: FrequencyInput;
  /** As `travelLimit`, `heatLimit`, `voltageLimit` of core make them, and your own; default none. */
  readonly limits?: readonly Limit[];
  /** What is read beside displacement, air speed and current, as `pressure`; default nothing. */
  readonly outputs?: readonly string[];
  /** Vents whose noise is judged; default none. */
  readonly vents?: readonly TimelineVent[];
  /** Default: all published ones. */
  readonly onsets?: readonly NoiseOnset[];
  /** How long a slice is, to the nearest sample; default 0.1 s. */
  readonly slice?: TimeInput;
  /** Over how long a time a current heats the coil: a mean with a memory that fades by e in it. Default 10 s, common practice. */
  readonly heatedOver?: TimeInput;
  /** In front of the amplifier. */
  readonly filter?: Filter;
  /** Default that of `compileLinear`; for a nonlinear system `compileNonlinear`, or it with your options. */
  readonly simulate?: Simulate<Motion>;
}

/** A piece of sound that is being heard. */
export interface Hearing<Motion> {
  readonly motion: Motion;
  readonly filter: readonly Float64Array[];
  readonly collected: Collected;
  readonly counted: readonly Counted[];
  /** Samples so far: of the slice, before the slice, and those without a solution. */
  readonly samples: { inSlice: number; before: number; unsolved: number };
}

/** A timeline, compiled for blocks of samples. */
export interface Timeline<Motion> {
  readonly sampleRate: Frequency;
  /** How long a slice is. */
  readonly slice: Time;
  /** What is read in each slice. */
  readonly outputs: readonly string[];
  /** What is judged in each slice. */
  readonly limits: readonly { readonly name: string; readonly basis: string }[];
  /** A system at rest. One timeline hears any number of pieces. */
  readonly start: () => Hearing<Motion>;
  /** Hears a block of the drive, V; hands back the slices that end in it. */
  readonly take: (hearing: Hearing<Motion>, drive: Float64Array) => readonly Slice[];
  /** The rest of a piece as its last slice, if there is any. */
  readonly end: (hearing: Hearing<Motion>) => readonly Slice[];
  /** What happened in the slices so far. */
  readonly account: (hearing: Hearing<Motion>) => TimelineAccount;
}

const shape = {
  sampleRate: positive('frequency'),
  limits: optional(given<readonly Limit[]>()),
  outputs: optional(given<readonly string[]>()),
  vents: optional(given<readonly TimelineVent[]>()),
  onsets: optional(given<readonly NoiseOnset[]>()),
  slice: optional(positive('time')),
  heatedOver: optional(positive('time')),
  filter: optional(given<Filter>()),
  simulate: optional(given<Simulate<never>>()),
};

/** Each sample of a linear simulation has a solution. */
const simulateLinear: Simulate<readonly Float64Array[]> = (system, options) => {
  const { start, run } = compileLinear(system, options);
  return {
    start,
    run: (states, drive, out) => {
      run(states, drive, out);
      return { unsolved: 0 };
    },
  };
};

/** What is read of each system that has these probes. */
const usual = { coneVelocity: 'displacement', ventAirSpeed: 'ventAirSpeed', current: 'current' } as const;

/**
 * What a system does while a piece is played, slice by slice, in constant memory: how far the cone travels, how fast the air in the
 * vent is, voltage and current, which limits are passed, and how much louder the piece may be until each is just kept.
 *
 * $$ q = \frac{\max |y|}{\sqrt2\, y_{\max}},\quad
 *    q_{heat} = \frac{\sqrt{\overline{y^2}}}{y_{\max}},\quad g = \frac{1}{\max q} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $y$ | `outputs` | SI | what is limited, at an instant |
 * | $y_{\max}$ | `limits` | SI | greatest rms value of a sine |
 * | $\overline{y^2}$ | `heatedOver` | SI | mean square that fades with time, for limits that are `averaged` |
 * | $q$ | `used` | 1 | how much of a limit is used; 1 where it is just kept |
 * | $g$ | `louder` | 1 | factor on the drive, exact for a linear system |
 *
 * A vent is held against the published onsets of noise, each slice as the sine of its peak speed û and longest stroke 2ξ, of the
 * frequency û/(2πξ): an onset that is a travel of the air is judged by its travel, and one that is a speed by its speed.
 *
 * @validity as the simulation. A nonlinear system is not twice as far at twice the drive: try its factors by playing again
 * @neglects peaks of the voltage between samples; what masks the noise of a vent
 * @returns a timeline, which hears block after block
 * @throws InputError those of the simulation, of `openingOf`, and `not-positive`, `out-of-range` for the fields
 * @source own (definition)
 * @example compileTimeline(box, { sampleRate: '48 kHz', limits: travelLimit(box.spec.drivers), vents: [{ vent: { diameter: '75 mm' } }] })
 */
export function compileTimeline<Motion = readonly Float64Array[]>(
  system: Simulated,
  options: TimelineOptions<Motion>,
): Timeline<Motion> {
  const read = readFields('timeline', options, shape);
  const { sampleRate, limits = [], vents = [], onsets = noiseOnsets, filter } = read;
  const { slice: asked = si('time', 0.1), heatedOver = si('time', 10) } = read;
  const simulate = (options.simulate ?? simulateLinear) as Simulate<Motion>;
  const length = Math.round(asked * sampleRate);
  if (length < 1) {
    const remedy = 'Give a longer slice.';
    refuse([{ code: 'out-of-range', path: 'timeline.slice', got: asked, expected: 'a sample at least', remedy }]);
  }
  const { probes } = system.network.topology;
  const own = Object.entries(usual).flatMap(([probe, output]) => (Object.hasOwn(probes, probe) ? [output] : []));
  // The first is the drive itself.
  const outputs = [...new Set([VOLTAGE, ...own, ...limits.map(outputOf), ...(read.outputs ?? [])])];
  const speedAt = outputs.indexOf('ventAirSpeed');
  if (vents.length > 0 && speedAt < 0) {
    const remedy = 'Leave out the vents of a box without one.';
    refuse([
      { code: 'inconsistent', path: 'timeline.vents', got: vents.length, expected: 'a probe ventAirSpeed', remedy },
    ]);
  }
  const judges = [...judgesOf(limits, outputs, 'timeline.limits'), ...noiseJudges(vents, onsets, system.air, speedAt)];
  const simulation = simulate(system, { sampleRate, outputs: outputs.slice(1) });
  const filtered = filter && filteredDrive(filter, sampleRate);
  const interval = 1 / sampleRate;

  const start = (): Hearing<Motion> => ({
    motion: simulation.start(),
    filter: filtered?.start() ?? [],
    collected: collectedOf(outputs.length),
    counted: judges.map(counted),
    samples: { inSlice: 0, before: 0, unsolved: 0 },
  });

  const named = (values: Float64Array) => Object.fromEntries(outputs.map((output, i) => [output, values[i]!]));

  function finish({ collected, counted: counts, samples }: Hearing<Motion>): Slice {
    const count = samples.inSlice;
    const reset = endSlice(collected, count, heatedOver * sampleRate);
    const { peak, sum, lasting, stroke } = collected;
    const measured = { peak, lasting, airTravel: stroke[2]! / 2 };
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

  const take: Timeline<Motion>['take'] = (hearing, drive) => {
    const { collected, samples } = hearing;
    const columns = outputs.map(() => new Float64Array(drive.length));
    const [voltage, ...others] = columns as [Float64Array, ...Float64Array[]];
    if (filtered) filtered.run(hearing.filter, drive, [voltage]);
    else voltage.set(drive);
    samples.unsolved += simulation.run(hearing.motion, voltage, others).unsolved;
    const slices: Slice[] = [];
    for (let from = 0; from < drive.length; ) {
      const to = Math.min(drive.length, from + length - samples.inSlice);
      columns.forEach((column, output) => collect(collected, output, column, from, to));
      if (speedAt >= 0) collectStroke(collected, columns[speedAt]!, from, to, interval);
      samples.inSlice += to - from;
      from = to;
      if (samples.inSlice === length) slices.push(finish(hearing));
    }
    return slices;
  };

  return {
    sampleRate,
    slice: si('time', length * interval),
    outputs,
    limits: judges.map(({ name, basis }) => ({ name, basis })),
    start,
    take,
    end: (hearing) => (hearing.samples.inSlice > 0 ? [finish(hearing)] : []),
    account: ({ collected, counted: counts, samples }) => {
      const heard = Math.max(1, samples.before);
      return {
        duration: si('time', samples.before * interval),
        peak: named(collected.wholePeak),
        rms: named(collected.wholeSum.map((total) => Math.sqrt(total / heard))),
        limits: judges.map((judge, i) => limitAccount(judge, counts[i]!)),
        unsolved: samples.unsolved,
      };
    },
  };
}
