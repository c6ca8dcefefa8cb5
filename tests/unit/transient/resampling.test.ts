/** What a change of sample rate promises, on sines: they pass, or they are gone; they stay where they are. */
import {
  compileResampler,
  float64,
  recordingFrom,
  resample,
  resampled,
  sourceOfBytes,
  wavBytes,
} from '@airspring/transient/recording';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';

const sineAt = (frequency: number, rate: number, count: number) =>
  Float64Array.from({ length: count }, (_, i) => Math.sin((2 * Math.PI * frequency * i) / rate));

test.each([
  [44_100, 48_000, 19_800],
  [48_000, 2000, 890],
  [44_100, 47_981, 100],
  [2000, 48_000, 895],
])('from %d Hz to %d Hz, a sine of %d Hz stays the same sine, without delay', (from, to, frequency) => {
  const out = resample(sineAt(frequency, from, from), { from: `${from} Hz`, to: `${to} Hz` });
  expect(out.length).toBe(to);
  const wanted = sineAt(frequency, to, to);
  const margin = Math.ceil((40 * to) / Math.min(from, to));
  const off = wanted.map((value, i) => Math.abs(out[i]! - value)).subarray(margin, to - margin);
  expect(off.reduce((most, one) => Math.max(most, one), 0)).toBeLessThan(2e-5);
});

test('what the lower rate cannot hold is gone', () => {
  const out = resample(sineAt(1105, 48_000, 48_000), { from: '48 kHz', to: '2 kHz' });
  expect(out.subarray(40, -40).reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)).toBeLessThan(1.2e-5);
});

test('a recording at another rate is one, by blocks no longer than asked for', async () => {
  const [left, right] = [sineAt(50, 1000, 1234), sineAt(70, 1000, 1234)];
  const recording = await recordingFrom(
    sourceOfBytes(wavBytes({ sampleRate: '1 kHz', channels: [left, right], format: float64 })),
  );
  const faster = resampled(recording, '48 kHz');
  expect(faster).toMatchObject({ sampleRate: 48_000, frames: 1234 * 48, duration: 1.234, channels: 2 });
  const heard: number[][] = [[], []];
  for await (const block of faster.blocks({ length: 100 })) {
    expect(block[0]!.length).toBeLessThanOrEqual(100);
    block.forEach((samples, c) => heard[c]!.push(...samples));
  }
  const rates = { from: '1 kHz', to: '48 kHz' } as const;
  expect(heard).toEqual([left, right].map((samples) => [...resample(samples, rates)]));
  expect(resampled(recording, '1 kHz')).toBe(recording);
});

test('nothing in, nothing out', () => {
  expect(resample(new Float64Array(), { from: '44.1 kHz', to: '48 kHz' })).toHaveLength(0);
});

test.each([
  ['resampling.to', 'out-of-range', () => compileResampler({ from: '1 Hz', to: '48 kHz' })],
  ['resampling.to', 'out-of-range', () => compileResampler({ from: '1000 kHz', to: '10 Hz' })],
  ['resampling.from', 'not-positive', () => compileResampler({ from: '0 Hz', to: '10 Hz' })],
] as const)('%s is refused as %s', (path, code, work) => {
  expect(faultsOf(work)).toMatchObject([{ path, code }]);
});
