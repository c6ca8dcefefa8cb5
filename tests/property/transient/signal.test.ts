/** Signals of any accepted numbers: finite samples, the same by any blocks; refusals are the one error of the library. */
import { si } from '@airspring/core/quantity';
import {
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
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';
import { allFinite, answered } from '../answered.js';

const any = fc.oneof(fc.double(), fc.double({ min: 0, max: 1e6 }), fc.constantFrom(0, -1, 1e300, Number.MIN_VALUE));
const frequency = fc.oneof(any, fc.double({ min: 1e-3, max: 1e5, noNaN: true })).map((hertz) => si('frequency', hertz));
const time = fc.oneof(any, fc.double({ min: 1e-6, max: 100, noNaN: true })).map((seconds) => si('time', seconds));
const seed = fc.oneof(any, fc.maxSafeNat());
/** Samples of a segment; long ones are tried seldom. */
const segment = fc.oneof(
  { weight: 30, arbitrary: fc.double({ min: 0.1, max: 3000, noNaN: true }) },
  { weight: 1, arbitrary: any },
);
const weights = fc.array(fc.record({ frequency: any, level: fc.oneof(any, fc.double({ min: -200, max: 200 })) }), {
  maxLength: 6,
});

const signal: fc.Arbitrary<() => Signal> = fc.oneof(
  fc.tuple(frequency).map(
    ([frequency]) =>
      () =>
        sine({ frequency }),
  ),
  fc.tuple(frequency, any).map(
    ([frequency, cycles]) =>
      () =>
        shapedBurst({ frequency, cycles }),
  ),
  fc.tuple(frequency, frequency, time).map(
    ([from, to, duration]) =>
      () =>
        sweep({ from, to, duration }),
  ),
  fc.tuple(seed).map(
    ([seed]) =>
      () =>
        pinkNoise({ seed }),
  ),
  fc.tuple(seed, weights).map(
    ([seed, weights]) =>
      () =>
        simulatedProgramme({ seed, weights: weights.sort((a, b) => a.frequency - b.frequency) }),
  ),
);

test.prop([signal, any, fc.maxSafeNat(), fc.nat(300)], { numRuns: fuzzRuns })(
  'is finite and between bounds, or refused',
  (make, sampleRate, from, size) => {
    const block = answered(() => make().compile(sampleRate));
    if (!block) return;
    const start = from % 2 ** 31;
    const whole = new Float64Array(size);
    block(start, whole);
    allFinite(whole);
    const end = new Float64Array(size >> 1);
    block(start + size - end.length, end);
    expect(end).toEqual(whole.slice(size - end.length));
  },
);

test.prop([frequency, segment, fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { maxLength: 700 })], {
  numRuns: fuzzRuns,
})('programme has finite numbers, or is refused, silent, or constant', (sampleRate, segment, samples) => {
  const resolution = si('frequency', sampleRate / segment);
  const listening = answered(() => compileListening({ sampleRate, resolution }));
  if (!listening) return;
  const heard = listening.start();
  listening.take(heard, Float64Array.from(samples));
  const programme = listening.programme(heard);
  const isLoud = samples.some((sample) => Math.abs(sample) > 1e-9);
  if (!programme.ok) expect(programme.because[0]!.code).toBe(isLoud ? 'constant' : 'silence');
  else {
    expect(isLoud).toBe(true);
    expect(programme.programme.share.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
  }
  allFinite(programme);
});

test.prop([fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0.01, max: 1, noNaN: true }), fc.nat(99)])(
  'a constant beside the sound changes neither the crest factor nor the spectrum of its programme',
  (constant, size, seed) => {
    const own = scaled(pinkNoise({ seed }), size);
    const beside = summed([own, { ...own, compile: () => (_, out) => void out.fill(constant) }]);
    const [alone, lifted] = [own, beside].map((signal) => {
      const found = programmeOf(signal, { sampleRate: '1 kHz', duration: '3 s' });
      if (!found.ok) throw new Error(found.because[0]!.text);
      return found.programme;
    });
    expect(lifted!.crestFactor).toBeCloseTo(alone!.crestFactor, 9);
    lifted!.share.forEach((share, i) => expect(share).toBeCloseTo(alone!.share[i]!, 9));
  },
);
