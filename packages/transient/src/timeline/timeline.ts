import { type Frequency, si, type Time } from '@airspring/core/quantity';
import type { Simulated } from '../simulation/index.js';
import type { TimelineAccount } from './account.js';
import { atOwnPath, outputAt } from './at-own-path.js';
import { filteredDrive } from './filtered-drive.js';
import { type Hearing, isAirSpeed, slicer } from './hearing.js';
import { judgesOf, outputOf, VOLTAGE } from './limits-in-time.js';
import type { Slice } from './slice.js';
import { readTimeline, type TimelineOptions } from './timeline-options.js';
import { noiseJudges } from './vent-noise-in-time.js';

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
 * @throws InputError those of the simulation, of `ventNoise`, and `not-positive`, `out-of-range` for the fields; while it hears,
 *   `not-finite` for a slice that is not all numbers
 * @source own (definition)
 * @example compileTimeline(box, { sampleRate: '48 kHz', limits: travelLimit(box.spec.drivers), vents: [{ vent: { diameter: '75 mm' } }] })
 */
export function compileTimeline<Motion = readonly Float64Array[]>(
  system: Simulated,
  options: TimelineOptions<Motion>,
): Timeline<Motion> {
  const read = readTimeline(options);
  const { sampleRate, length, limits, vents, filter } = read;
  const { probes } = system.network.topology;
  const has = (probe: string) => Object.hasOwn(probes, probe);
  const own = [
    ...(has('coneVelocity') ? ['displacement'] : []),
    ...Object.keys(probes).filter(isAirSpeed),
    ...(has('current') ? ['current'] : []),
  ];
  // The first is the drive itself.
  const outputs = [...new Set([VOLTAGE, ...own, ...limits.map(outputOf), ...read.outputs])];
  const judges = [
    ...judgesOf(limits, outputs, 'timeline.limits'),
    ...noiseJudges(vents, read.onsets, system.air, outputs),
  ];
  const asked = outputs.slice(1);
  /** Where the reader asked for what a simulation calls by its place in `asked`. */
  const placeOf = (path: string): string => {
    const at = outputAt(path);
    if (at === undefined) return path;
    const own = read.outputs.indexOf(asked[at]!);
    if (own >= 0) return `timeline.outputs[${own}]`;
    return `timeline.limits[${limits.findIndex((limit) => outputOf(limit) === asked[at])}].probe`;
  };
  const simulation = atOwnPath(placeOf, () => read.simulate(system, { sampleRate, outputs: asked }));
  const filtered = filter && filteredDrive(filter, sampleRate);
  const interval = 1 / sampleRate;
  const heard = slicer({ outputs, judges, length, interval, memory: read.heatedOver * sampleRate });

  const take: Timeline<Motion>['take'] = (hearing, drive) => {
    const columns = outputs.map(() => new Float64Array(drive.length));
    const [voltage, ...others] = columns as [Float64Array, ...Float64Array[]];
    if (filtered) filtered.run(hearing.filter, drive, [voltage]);
    else voltage.set(drive);
    hearing.samples.unsolved += simulation.run(hearing.motion, voltage, others).unsolved;
    return heard.take(hearing, columns);
  };

  return {
    sampleRate,
    slice: si('time', length * interval),
    outputs,
    limits: judges.map(({ name, basis }) => ({ name, basis })),
    start: () => heard.start(simulation.start(), filtered?.start() ?? []),
    take,
    end: heard.end,
    account: heard.account,
  };
}
