import type { LawResult } from '@airspring/core/laws';
import type { Decoder, Recording } from './recording.js';
import type { RecordingSource } from './source.js';

/** What a recording holds, channel by channel, and its longest block. */
async function heard({ channels, blocks }: Recording, length: number) {
  const samples = Array.from({ length: channels }, () => [] as number[]);
  let longest = 0;
  for await (const block of blocks({ length })) {
    const frames = block[0]?.length ?? 0;
    if (block.length !== channels || block.some((channel) => channel.length !== frames)) {
      return { samples, longest, fault: `a block has ${block.map((channel) => channel.length).join(', ')} samples` };
    }
    longest = Math.max(longest, frames);
    block.forEach((channel, c) => samples[c]!.push(...channel));
  }
  return { samples, longest, fault: undefined };
}

const length = 101;

/**
 * The laws of every decoder, ours and a stranger's, tried on a short file of its format: it knows the file by its start, the blocks
 * have the stated channels and are no longer than asked for, there are as many frames as stated, each sample is a finite number,
 * and the sound can be read twice, by any blocks, and is the same.
 *
 * @validity files that fit into memory
 * @neglects whether the samples are those that were recorded
 * @returns one result for each law
 * @throws InputError as the decoder does for a file that it refuses
 * @source own (definitions)
 * @example (await decoderLaws(wav, sourceOfBytes(bytes))).every(({ holds }) => holds)
 */
export async function decoderLaws(decoder: Decoder, source: RecordingSource): Promise<readonly LawResult[]> {
  const start = await source.read(0, 4096);
  const recording = await decoder.open(source);
  const [one, other] = [await heard(recording, length), await heard(recording, 4 * length + 1)];
  const frames = one.samples[0]?.length ?? 0;
  const unlike = one.samples.some((channel, c) =>
    channel.some((sample, i) => !Object.is(sample, other.samples[c]?.[i])),
  );
  const odd = one.samples.flat().find((sample) => !Number.isFinite(sample));
  const told = recording.frames ?? frames;
  const law = (what: string, fault: string | false | undefined): LawResult =>
    fault ? { law: what, holds: false, detail: fault } : { law: what, holds: true, detail: `${frames} frames` };
  return [
    law('it knows its format by the start', !decoder.knows(start) && `it does not know the file that it opened`),
    law('blocks have the channels that are told', one.fault ?? other.fault),
    law(
      'blocks are no longer than asked for',
      one.longest > length && `a block has ${one.longest} frames, not ${length}`,
    ),
    law('there are as many frames as told', told !== frames && `${told} frames are told, and ${frames} are there`),
    law('each sample is finite', odd !== undefined && `a sample is ${odd}`),
    law('the sound is the same by any blocks', unlike && 'samples differ when it is read again by longer blocks'),
  ];
}
