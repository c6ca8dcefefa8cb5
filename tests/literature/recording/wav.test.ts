/** WAV files of all kinds that other programs wrote, sample by sample; and ours, byte by byte. */
import {
  mixDown,
  pcm8,
  pcm16,
  pcm24,
  pcm32,
  recordingFrom,
  type SampleFormat,
  sourceOfBytes,
  wavBytes,
} from '@airspring/transient/recording';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import json from './files.json' with { type: 'json' };

const bytesOf = (base64: string) => new Uint8Array(Buffer.from(base64, 'base64'));

/** All samples of each channel, read by blocks of an odd size. */
async function samplesOf(bytes: Uint8Array, length = 7): Promise<number[][]> {
  const recording = await recordingFrom(sourceOfBytes(bytes));
  const channels = Array.from({ length: recording.channels }, () => [] as number[]);
  for await (const block of recording.blocks({ length })) {
    block.forEach((samples, c) => channels[c]!.push(...samples));
  }
  return channels;
}

test.each(json.files)('$name', async ({ base64, sampleRate, format, samples, told }) => {
  const recording = await recordingFrom(sourceOfBytes(bytesOf(base64)));
  expect(recording).toMatchObject({ sampleRate, format, channels: samples.length, frames: samples[0]!.length });
  expect(recording.duration).toBe(samples[0]!.length / sampleRate);
  expect(recording.warnings.map(({ path }) => path)).toEqual(told);
  expect(await samplesOf(bytesOf(base64))).toEqual(samples);
});

const samples = (name: string) => json.files.find((file) => file.name.includes(name))!;
test.each([
  ['pcm8', '8-bit, odd length', pcm8],
  ['pcm16', '16-bit stereo', pcm16],
  ['pcm24', '24-bit stereo', pcm24],
  ['pcm32', '32-bit, by', pcm32],
] as const satisfies readonly (readonly [string, string, SampleFormat])[])(
  '%s is written byte by byte as another program does',
  (name, file, format) => {
    const { sampleRate, samples: all } = samples(file);
    const channels = all.map((channel) => channel.slice(0, format === pcm8 ? -1 : undefined));
    expect(Array.from(wavBytes({ sampleRate: `${sampleRate} Hz`, channels, format }))).toEqual(json.written[name]);
  },
);

const stereo = samples('16-bit stereo').samples.map((channel) => Float64Array.from(channel));
for (const [name, weights] of [
  ['mean', undefined],
  ['weighted', [0.75, -0.5]],
] as const) {
  check(`recording.mix-down.${name}`, {
    formula: 'recording/mixDown',
    source: { key: 'scipy', locator: 'numpy, of both channels' },
    status: 'derived',
    kind: 'program',
    given: { weights: { value: weights ? weights.join(', ') : 'mean', unit: '1' } },
    got: () => mixDown(stereo, weights),
    expected: json.mixed[name],
    unit: '1',
    tolerance: { absolute: 1e-15, why: 'double precision' },
  });
}
