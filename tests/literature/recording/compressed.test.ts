/** FLAC, Ogg Vorbis and MP3 files of an independent program, read by the packages that are loaded on demand. */
import { flac, mp3, oggVorbis, recordingFrom, sourceOfBytes, wav } from '@airspring/transient/recording';
import { expect, test } from 'vitest';
import json from './compressed.json' with { type: 'json' };

/**
 * What the decoders leave of the samples of another program, half of full scale at most: FLAC takes 32,767 of 16 bits for full scale,
 * Vorbis and MP3 differ by the arithmetic of each program.
 */
const nearness: Readonly<Record<string, number>> = { FLAC: 0.5 / 32_767, OGG: 2e-5, MP3: 2e-5 };

test.each(json.files)('$name of $frames frames', async ({ name, base64, frames, samples }) => {
  const recording = await recordingFrom(sourceOfBytes(new Uint8Array(Buffer.from(base64, 'base64'))));
  expect(recording).toMatchObject({ sampleRate: json.sampleRate, channels: 2, warnings: [] });
  const heard: number[][] = [[], []];
  for await (const block of recording.blocks({ length: 1000 })) {
    expect(block[0]!.length).toBeLessThanOrEqual(1000);
    block.forEach((channel, c) => heard[c]!.push(...channel));
  }
  expect(heard[0]!.length).toBe(frames);
  const worst = Math.max(
    ...samples.flatMap((channel, c) => channel.map((sample, i) => Math.abs(sample - heard[c]![json.places[i]!]!))),
  );
  expect(worst).toBeLessThanOrEqual(nearness[name]!);
});

test('each format is known by its start', () => {
  const starts = json.files.map(({ base64 }) => new Uint8Array(Buffer.from(base64.slice(0, 80), 'base64')));
  const known = starts.map((start) =>
    [wav, flac, oggVorbis, mp3].filter(({ knows }) => knows(start)).map(({ name }) => name),
  );
  expect(known).toEqual([['FLAC'], ['FLAC'], ['Ogg Vorbis'], ['MP3']]);
  expect([wav, flac, oggVorbis, mp3].some(({ knows }) => knows(new Uint8Array()))).toBe(false);
});
