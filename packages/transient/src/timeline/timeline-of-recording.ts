import { given, optional, positive, readFields, type VoltageRmsInput } from '@airspring/core/quantity';
import { mixDown, type Recording, resampled } from '../recording/index.js';
import type { TimelineAccount } from './account.js';
import type { Slice } from './slice.js';
import type { Timeline } from './timeline.js';

/** How a recording is played. */
export interface PlayOptions {
  /** What the amplifier gives for a sine of full scale. A sample of full scale is √2 times as much. */
  readonly fullScale: VoltageRmsInput;
  /** As in `mixDown`; default the mean of all channels. */
  readonly weights?: readonly number[];
  /** Called with the slices that each block of the recording ends. */
  readonly each?: (slices: readonly Slice[]) => void;
}

const shape = {
  fullScale: positive('voltageRms'),
  weights: optional(given<readonly number[]>()),
  each: optional(given<(slices: readonly Slice[]) => void>()),
};

/**
 * Plays a recording through a timeline: mixed to one channel, at the sample rate of the timeline, in constant memory.
 *
 * @validity as `compileTimeline`
 * @neglects as `compileTimeline`
 * @returns what happened in the whole piece. A silent recording uses nothing of any limit
 * @throws InputError as `recordingFrom`, `mixDown` and `resampled`, and those of the fields
 * @source own (definition)
 * @example await timelineOfRecording(timeline, await recordingFrom(source), { fullScale: '20 V' })
 */
export async function timelineOfRecording<Motion>(
  timeline: Timeline<Motion>,
  recording: Recording,
  options: PlayOptions,
): Promise<TimelineAccount> {
  const { fullScale, weights, each = () => {} } = readFields('play', options, shape);
  const { sampleRate, start, take, end, account } = timeline;
  const hearing = start();
  for await (const channels of resampled(recording, sampleRate).blocks()) {
    const drive = mixDown(channels, weights);
    for (let i = 0; i < drive.length; i++) drive[i]! *= Math.SQRT2 * fullScale;
    each(take(hearing, drive));
  }
  each(end(hearing));
  return account(hearing);
}
