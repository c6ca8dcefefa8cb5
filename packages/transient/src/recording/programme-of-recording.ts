import type { Impossible } from '@airspring/core/fault';
import type { FrequencyInput } from '@airspring/core/quantity';
import { compileListening, type MeasuredProgramme } from '../signal/index.js';
import { mixDown } from './mix-down.js';
import type { Recording } from './recording.js';

/** How a recording is listened to. */
export interface RecordingProgrammeOptions {
  /** As in `mixDown`; default the mean of all channels. */
  readonly weights?: readonly number[] | undefined;
  /** As in `compileListening`. */
  readonly resolution?: FrequencyInput | undefined;
}

/**
 * Crest factor and spectrum of a recording, its channels mixed to one. It is read once, in constant memory.
 *
 * @validity as `compileListening`, which says how
 * @neglects how the spectrum changes over the piece
 * @returns the programme, or why there is none: `silence`, or a `constant`
 * @throws InputError as `recordingFrom`, `mixDown` and `compileListening`
 * @source welch1967 (method)
 * @example await programmeOfRecording(await recordingFrom(source)) // greatestProgrammeLevel(box, limits, { programme: found.programme })
 */
export async function programmeOfRecording(
  { sampleRate, blocks }: Recording,
  { weights, resolution }: RecordingProgrammeOptions = {},
): Promise<MeasuredProgramme | Impossible> {
  const { start, take, programme } = compileListening({ sampleRate, resolution });
  const heard = start();
  for await (const channels of blocks()) take(heard, mixDown(channels, weights));
  return programme(heard);
}
