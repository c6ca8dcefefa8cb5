/** Headers with any bytes changed: sound with finite samples, or the one error; never more memory or reads than the file is worth. */
import { isInputError } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import {
  compileResampler,
  float32,
  float64,
  pcm8,
  pcm16,
  pcm24,
  pcm32,
  type RecordingSource,
  recordingFrom,
  resample,
  sourceOfBytes,
  wavBytes,
} from '@airspring/transient/recording';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';
import compressed from '../../literature/recording/compressed.json' with { type: 'json' };
import json from '../../literature/recording/files.json' with { type: 'json' };
import { allFinite, answered } from '../answered.js';

const formats = [pcm8, pcm16, pcm24, pcm32, float32, float64];
const files = json.files.map(({ base64 }) => new Uint8Array(Buffer.from(base64, 'base64')));

/** A source that counts what is asked of it. */
function counted(bytes: Uint8Array, isMeasured: boolean) {
  const asked = { reads: 0, bytes: 0 };
  const { size, read } = sourceOfBytes(bytes);
  const source: RecordingSource = {
    ...(isMeasured ? { size } : {}),
    read: (offset, length) => {
      asked.reads++;
      asked.bytes += Math.max(0, Math.min(length, bytes.length - offset));
      return read(offset, length);
    },
  };
  return { asked, source };
}

const place = fc.oneof({ weight: 3, arbitrary: fc.nat(130) }, { weight: 1, arbitrary: fc.nat(20_000) });
const byte = fc.oneof(fc.nat(255), fc.constantFrom(0, 1, 127, 128, 254, 255));
const edits = fc.array(fc.record({ at: place, bytes: fc.array(byte, { minLength: 1, maxLength: 8 }) }), {
  maxLength: 4,
});

test.prop([fc.constantFrom(...files), edits, fc.option(fc.nat(400)), fc.boolean(), fc.integer({ min: 1, max: 50 })], {
  numRuns: fuzzRuns,
})('any bytes are sound or refused', async (file, changes, cut, isMeasured, length) => {
  const bytes = file.slice(0, cut ?? file.length);
  for (const { at, bytes: by } of changes)
    bytes.set(by.slice(0, Math.max(0, bytes.length - at)), Math.min(at, bytes.length));
  const { asked, source } = counted(bytes, isMeasured);
  try {
    const { channels, frames = 0, blocks } = await recordingFrom(source);
    let read = 0;
    for await (const block of blocks({ length })) {
      expect(block.length).toBe(channels);
      expect(block.every((samples) => samples.length === block[0]!.length && samples.every(Number.isFinite))).toBe(
        true,
      );
      read += block[0]!.length;
    }
    expect(read).toBe(frames);
    expect(frames * channels).toBeLessThanOrEqual(bytes.length);
  } catch (error) {
    if (!isInputError(error)) throw error;
    expect(error.faults).toHaveLength(1);
  }
  expect(asked.reads).toBeLessThanOrEqual(70 + bytes.length / 8);
  expect(asked.bytes).toBeLessThanOrEqual(5 * 4096 + 8 * bytes.length);
});

test.prop([
  fc.array(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 }), {
    minLength: 1,
    maxLength: 5,
  }),
  fc.constantFrom(...formats),
  fc.integer({ min: 1, max: 1_000_000 }),
])('what is written is read again, but for the rounding of its format', async (channels, format, rate) => {
  const recording = await recordingFrom(sourceOfBytes(wavBytes({ sampleRate: `${rate} Hz`, channels, format })));
  expect(recording).toMatchObject({ sampleRate: rate, channels: channels.length, frames: 4 });
  const step = format.tag === 3 ? (format === float64 ? 0 : 2 ** -24) : 2 ** (1 - 8 * format.bytes);
  for await (const block of recording.blocks()) {
    block.forEach((samples, c) =>
      samples.forEach((sample, i) => expect(Math.abs(sample - channels[c]![i]!)).toBeLessThanOrEqual(step)),
    );
  }
});

const rate = fc.oneof(
  fc.constantFrom(8000, 11_025, 44_100, 48_000, 96_000, 47_981, 2000),
  fc.double({ min: 500, max: 1e5, noNaN: true }),
  fc.double(),
);
test.prop([rate, rate, fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { maxLength: 300 }), fc.nat(99)])(
  'another rate: as many samples as told, finite, the same by blocks; or refused',
  (from, to, samples, cut) => {
    const rates = { from: si('frequency', from), to: si('frequency', to) };
    const resampler = answered(() => compileResampler(rates));
    if (!resampler) return;
    const all = Float64Array.from(samples);
    const whole = resample(all, rates);
    allFinite(whole);
    expect(whole.length).toBe(resampler.length(samples.length));
    const state = resampler.start();
    const parts = [all.subarray(0, cut), all.subarray(cut)].flatMap((part) => [...resampler.run(state, part)]);
    expect([...parts, ...resampler.end(state)]).toEqual([...whole]);
  },
);

const packed = compressed.files.map(({ base64 }) => new Uint8Array(Buffer.from(base64, 'base64')));
const damage = fc.array(
  fc.record({ at: fc.oneof(fc.nat(300), fc.nat(20_000)), bytes: fc.array(byte, { maxLength: 20 }) }),
  {
    maxLength: 6,
  },
);
test.prop([fc.constantFrom(...packed), damage, fc.option(fc.nat(9000))], {
  numRuns: Math.min(30, Math.ceil(fuzzRuns / 4)),
})('compressed files with any bytes changed are sound or refused', async (file, changes, cut) => {
  const bytes = file.slice(0, cut ?? file.length);
  for (const { at, bytes: by } of changes)
    bytes.set(by.slice(0, Math.max(0, bytes.length - at)), Math.min(at, bytes.length));
  try {
    const { blocks, channels } = await recordingFrom(sourceOfBytes(bytes));
    for await (const block of blocks()) {
      expect(block.length).toBe(channels);
      expect(block.every((samples) => samples.every(Number.isFinite))).toBe(true);
    }
  } catch (error) {
    if (!isInputError(error)) throw error;
  }
});
