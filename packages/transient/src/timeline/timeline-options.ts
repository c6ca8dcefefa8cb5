import { type Fault, refuse } from '@airspring/core/fault';
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
  type TimeInput,
} from '@airspring/core/quantity';
import { type NoiseOnset, noiseOnsets } from '@airspring/core/vent';
import { compileLinear, type Simulated } from '../simulation/index.js';
import type { TimelineVent } from './vent-noise-in-time.js';

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

const unlessList = (field: string, got: unknown): Fault[] =>
  got === undefined || Array.isArray(got)
    ? []
    : [
        {
          code: 'inconsistent',
          path: `timeline.${field}`,
          got,
          expected: `a list of ${field}`,
          remedy: 'Put it in square brackets.',
        },
      ];

/** Reads what is judged over time; `length` is that of a slice in samples. */
export function readTimeline<Motion>(options: TimelineOptions<Motion>) {
  const read = readFields('timeline', options, shape);
  const { slice = si('time', 0.1), sampleRate } = read;
  const length = Math.round(slice * sampleRate);
  refuse([
    ...unlessList('limits', read.limits),
    ...unlessList('outputs', read.outputs),
    ...unlessList('vents', read.vents),
    ...unlessList('onsets', read.onsets),
  ]);
  if (length < 1) {
    const remedy = 'Give a longer slice.';
    refuse([{ code: 'out-of-range', path: 'timeline.slice', got: slice, expected: 'at least one sample', remedy }]);
  }
  return {
    ...{ sampleRate, length, filter: read.filter },
    ...{ limits: read.limits ?? [], vents: read.vents ?? [], onsets: read.onsets ?? noiseOnsets },
    outputs: read.outputs ?? [],
    heatedOver: read.heatedOver ?? si('time', 10),
    simulate: (options.simulate ?? simulateLinear) as Simulate<Motion>,
  };
}
