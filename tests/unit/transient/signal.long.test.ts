/** What signals promise: the same samples by any blocks, and refusals at the path of the fault. */
import { greatestProgrammeLevel, type Limit, pinkProgramme } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import {
  clipped,
  compileListening,
  pinkNoise,
  programmeOf,
  type Signal,
  scaled,
  shapedBurst,
  simulatedProgramme,
  sine,
  summed,
  sweep,
} from '@airspring/transient/signal';
import { compileLinear } from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { faultsOf, pathsOf } from '../../refusal/faults.js';
import { closed } from './boxes.js';

const RATE = 48_000;
const signals: readonly Signal[] = [
  sine({ frequency: '440 Hz' }),
  shapedBurst({ frequency: '100 Hz' }),
  sweep({ from: '200 Hz', to: '20 Hz', duration: '0.05 s' }),
  pinkNoise({ seed: 3 }),
  simulatedProgramme({ seed: 3 }),
  clipped(summed([scaled(pinkNoise({ seed: 4 }), 0.5), sine({ frequency: '50 Hz' })]), 0.7),
];

test.each(signals)('$name is the same by any blocks', ({ compile }) => {
  const whole = new Float64Array(5000);
  compile(RATE)(0, whole);
  const block = compile(RATE);
  for (const [from, size] of [
    [4999, 1],
    [17, 0],
    [0, 3],
    [1001, 64],
    [2048, 1024],
  ] as const) {
    const out = new Float64Array(size);
    block(from, out);
    expect(out).toEqual(whole.slice(from, from + size));
  }
});

test('bursts and sweeps are silent before and after', () => {
  const out = new Float64Array(3200);
  shapedBurst({ frequency: '100 Hz' }).compile(RATE)(-10, out);
  expect(out.subarray(0, 11).every((sample) => sample === 0)).toBe(true);
  expect(out.subarray(10 + 3120).every((sample) => sample === 0)).toBe(true);
  sweep({ from: '20 Hz', to: '200 Hz', duration: '0.05 s' }).compile(RATE)(-10, out);
  expect(out.subarray(0, 11).every((sample) => sample === 0)).toBe(true);
  expect(out.subarray(10 + 2401).every((sample) => sample === 0)).toBe(true);
});

test('noise of another seed is another; its rms is 1 and its peaks are those of noise', () => {
  const [one, other] = [new Float64Array(8), new Float64Array(8)];
  pinkNoise({ seed: 1 }).compile(RATE)(0, one);
  pinkNoise({ seed: 2 }).compile(RATE)(0, other);
  expect(one.some((sample, i) => sample === other[i])).toBe(false);
  const heard = programmeOf(pinkNoise({ seed: 1 }), { sampleRate: '2 kHz', duration: '400 s' });
  expect(heard).toMatchObject({
    ok: true,
    rms: expect.closeTo(1, 1),
    programme: { crestFactor: expect.closeTo(4.6, 0) },
  });
});

test('what has lower peaks has a lower crest factor', () => {
  const options = { sampleRate: '2 kHz', duration: '100 s' } as const;
  const heard = programmeOf(clipped(simulatedProgramme({ seed: 1 }), 2), options);
  expect(heard).toMatchObject({ ok: true, peak: 2, programme: { crestFactor: expect.closeTo(2, 0) } });
});

test('pink noise, synthesised and measured, has the shares of the pink programme of core', () => {
  const heard = programmeOf(pinkNoise({ seed: 5 }), { sampleRate: '2 kHz', duration: '1000 s' });
  if (!heard.ok) throw new Error('silent');
  const { frequencies, share, crestFactor } = heard.programme;
  const first = frequencies.findIndex((f) => f > 20);
  const parts = 24 * 4;
  const edge = (i: number) => Math.sqrt(frequencies[i - 1]! * frequencies[i]!);
  const [from, to] = [edge(first), edge(first + parts)];
  const pink = pinkProgramme({ from: `${from} Hz`, to: `${to} Hz`, crestFactor: si('ratio', crestFactor) });
  expect(pink.frequencies).toHaveLength(parts);
  const band = share.subarray(first, first + parts);
  const sum = band.reduce((total, one) => total + one, 0);
  for (let i = 0; i < parts; i++) expect(frequencies[first + i]! / pink.frequencies[i]!).toBeCloseTo(1, 9);
  // A third of an octave of noise scatters by a few per cent in this time.
  for (let i = 0; i < parts; i += 8) {
    const [ours, cores] = [band, pink.share].map((shares) => shares.subarray(i, i + 8).reduce((a, b) => a + b, 0));
    expect(ours! / sum / cores!, `${frequencies[first + i]} Hz`).toBeGreaterThan(0.94);
    expect(ours! / sum / cores!, `${frequencies[first + i]} Hz`).toBeLessThan(1.06);
  }
});

test('the programme of a signal goes into the limits of core, which then say what a simulation of it does', () => {
  const rate = 2000;
  const signal = simulatedProgramme({ seed: 3 });
  const heard = programmeOf(signal, { sampleRate: `${rate} Hz`, duration: '200 s' });
  if (!heard.ok) throw new Error('silent');
  const limit: Limit = {
    name: 'far',
    probe: 'coneVelocity',
    integrated: true,
    averaged: true,
    greatestRms: 1e-3,
    basis: 'a test',
  };
  const { driveVoltageRms } = greatestProgrammeLevel(closed, [limit], { programme: heard.programme });
  const block = new Float64Array(200 * rate);
  signal.compile(rate)(0, block);
  const out = new Float64Array(block.length);
  const { run, start } = compileLinear(closed, { sampleRate: `${rate} Hz`, outputs: ['displacement'] });
  run(
    start(),
    block.map((u) => (u * driveVoltageRms) / heard.rms),
    [out],
  );
  const rms = Math.sqrt(out.reduce((sum, x) => sum + x * x, 0) / out.length);
  // The ends of the piece count less in its spectrum.
  expect(Math.abs(rms / 1e-3 - 1)).toBeLessThan(0.01);
});

test('what never changes is no programme, however short', () => {
  const { start, take, programme } = compileListening({ sampleRate: '2 kHz' });
  for (const samples of [1, 2, 100, 2047, 2048, 8000]) {
    const heard = start();
    take(heard, new Float64Array(samples).fill(0.3));
    expect(programme(heard)).toMatchObject({ ok: false, because: [{ code: 'constant' }] });
  }
});

test('a constant beside a sound shorter than a segment adds nothing to its bass, and its bands are those that it resolves', () => {
  const { start, take, programme } = compileListening({ sampleRate: '2 kHz' });
  const told = (constant: number) => {
    const heard = start();
    take(
      heard,
      Float64Array.from({ length: 1000 }, (_, i) => constant + 0.1 * Math.sin((2 * Math.PI * 60 * i) / 2000)),
    );
    const found = programme(heard);
    if (!found.ok) throw new Error(found.because[0]!.text);
    const { frequencies, share } = found.programme;
    return { found, below20: share.reduce((sum, one, i) => sum + (frequencies[i]! < 20 ? one : 0), 0) };
  };
  expect(told(0.5).below20).toBeLessThan(1e-6);
  expect(told(0.5).below20).toBeCloseTo(told(0).below20, 12);
  // Half a second tells 2 Hz apart: four times that is as wide as the third octave at 40 Hz.
  expect(told(0.5).found.bands[0]!.frequency).toBeCloseTo(39.8, 1);
});

test('the crest factor of a tone is √2 beside any constant, and a sample that is no number is refused', () => {
  const { start, take, programme } = compileListening({ sampleRate: '2 kHz' });
  const heard = start();
  take(
    heard,
    Float64Array.from({ length: 8000 }, (_, i) => 0.5 + 0.01 * Math.sin((Math.PI * i) / 20)),
  );
  const found = programme(heard);
  expect(found.ok && found.programme.crestFactor).toBeCloseTo(Math.SQRT2, 9);
  for (const odd of [Number.NaN, Infinity]) {
    const spoilt = start();
    take(spoilt, Float64Array.of(0.1, odd, 0.2));
    expect(pathsOf(() => programme(spoilt))).toEqual(['samples']);
  }
});

test('silence is no programme, and neither is nothing', () => {
  const silence = scaled(sine({ frequency: '10 Hz' }), 0);
  const because = [{ code: 'silence', text: 'There is no sound: no sample is greater than 10⁻⁹.' }];
  expect(programmeOf(silence, { sampleRate: '2 kHz', duration: '1 s' })).toEqual({ ok: false, because });
  const { start, programme } = compileListening({ sampleRate: '2 kHz' });
  expect(programme(start())).toEqual({ ok: false, because });
});

test('two samples are answered with finite numbers', () => {
  const { start, take, programme } = compileListening({ sampleRate: '2 kHz' });
  const heard = start();
  take(heard, Float64Array.of(0.5, -0.5));
  const found = programme(heard);
  expect(found).toMatchObject({ ok: true, peak: 0.5, rms: 0.5, programme: { crestFactor: 1 }, bands: [] });
  expect(found.ok && found.spectrum.density.every(Number.isFinite)).toBe(true);
});

test.each([
  ['sine.frequency', 'out-of-range', () => sine({ frequency: '1 kHz' }).compile(2000)],
  ['shapedBurst.frequency', 'out-of-range', () => shapedBurst({ frequency: '1 kHz' }).compile(2000)],
  ['sweep.to', 'out-of-range', () => sweep({ from: '10 Hz', to: '1 kHz', duration: '1 s' }).compile(2000)],
  ['sweep.from', 'out-of-range', () => sweep({ from: '1 kHz', to: '10 Hz', duration: '1 s' }).compile(2000)],
  ['sweep.to', 'inconsistent', () => sweep({ from: '10 Hz', to: '10 Hz', duration: '1 s' })],
  ['shapedBurst.cycles', 'not-positive', () => shapedBurst({ frequency: '30 Hz', cycles: 0 })],
  ['seed', 'out-of-range', () => pinkNoise({ seed: -1 })],
  ['seed', 'out-of-range', () => simulatedProgramme({ seed: 0.5 })],
  ['sampleRate', 'out-of-range', () => pinkNoise({ seed: 1 }).compile(1)],
  ['weights', 'empty', () => simulatedProgramme({ seed: 1, weights: [] })],
  ['weights[0]', 'not-finite', () => simulatedProgramme({ seed: 1, weights: [{ frequency: Number.NaN, level: 0 }] })],
  ['weights[0]', 'out-of-range', () => simulatedProgramme({ seed: 1, weights: [{ frequency: 20, level: 300 }] })],
  [
    'weights[1]',
    'unsorted',
    () => simulatedProgramme({ seed: 1, weights: [20, 20].map((frequency) => ({ frequency, level: 0 })) }),
  ],
  ['by', 'not-finite', () => scaled(sine({ frequency: '1 kHz' }), Number.NaN)],
  ['peak', 'not-positive', () => clipped(sine({ frequency: '1 kHz' }), 0)],
  ['peak', 'not-finite', () => clipped(sine({ frequency: '1 kHz' }), Number.NaN)],
  ['listening.resolution', 'out-of-range', () => compileListening({ sampleRate: '48 kHz', resolution: '0.001 Hz' })],
  [
    'programme.duration',
    'not-positive',
    () => programmeOf(sine({ frequency: '1 kHz' }), { sampleRate: '8 kHz', duration: '0 s' }),
  ],
] as const)('%s is refused as %s', (path, code, work) => {
  expect(faultsOf(work)).toMatchObject([{ path, code }]);
});
