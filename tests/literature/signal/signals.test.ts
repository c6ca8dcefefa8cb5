/** Samples of each signal against independent programs. */
import {
  clipped,
  pinkNoise,
  type Signal,
  scaled,
  shapedBurst,
  simulatedProgramme,
  sine,
  summed,
  sweep,
} from '@airspring/transient/signal';
import { check } from '../../ledger/check.js';
import { fixtures, samplesOf } from './fixtures.js';

const numpy = { key: 'scipy', locator: 'numpy, from the definition' };
const places = { value: fixtures.places, unit: 'samples' };
const program = { status: 'derived', kind: 'program', unit: '1' } as const;
const rounding = { absolute: 1e-13, why: 'double precision on both sides, after up to 30 turns' };
const at = (signal: Signal, place: number) => samplesOf(signal, place, 1)[0]!;

const tone = () => sine({ frequency: '30 Hz' });
const moving = () => sweep({ from: '10 Hz', to: '200 Hz', duration: '1 s' });
const burst = () => shapedBurst({ frequency: '31.5 Hz' });

check('signal.sine.samples', {
  ...program,
  formula: 'signal/sine',
  source: numpy,
  given: { place: places },
  got: ({ place }) => at(tone(), place),
  expected: fixtures.sine,
  tolerance: rounding,
});

check('signal.sweep.samples', {
  ...program,
  formula: 'signal/sweep',
  source: { key: 'scipy', locator: 'scipy.signal.chirp, logarithmic, 90° back' },
  given: { place: places },
  got: ({ place }) => at(moving(), place),
  expected: fixtures.sweep,
  tolerance: rounding,
});

check('signal.burst.samples', {
  ...program,
  formula: 'signal/shapedBurst',
  source: numpy,
  given: { place: { value: fixtures.burst.places, unit: 'samples' } },
  got: ({ place }) => at(burst(), place),
  expected: fixtures.burst.samples,
  tolerance: { absolute: 1e-14, why: 'double precision on both sides' },
});

check('signal.burst.crest-factor', {
  formula: 'signal/shapedBurst',
  source: {
    key: 'ponteggia2013',
    locator: 'formula of the test signal: the mean square of a Hann window is 3/8, of a sine 1/2',
  },
  status: 'derived',
  kind: 'example',
  given: { frequency: { value: 31.5, unit: 'Hz' } },
  got: () => {
    const samples = samplesOf(burst(), 0, 9905);
    const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    return 20 * Math.log10(peak / Math.hypot(...samples)) + 10 * Math.log10((6.5 * 48_000) / 31.5);
  },
  expected: 10 * Math.log10(16 / 3),
  unit: 'dB',
  tolerance: { absolute: 1e-4, why: 'the peak lies between two samples' },
});

check('signal.scaled.samples', {
  ...program,
  formula: 'signal/scaled',
  source: numpy,
  given: { place: places },
  got: ({ place }) => at(scaled(tone(), -2.5), place),
  expected: fixtures.sine.map((sample) => -2.5 * sample),
  tolerance: rounding,
});

check('signal.summed.samples', {
  ...program,
  formula: 'signal/summed',
  source: numpy,
  given: { place: places },
  got: ({ place }) => at(summed([tone(), moving()]), place),
  expected: fixtures.sine.map((sample, i) => sample + fixtures.sweep[i]!),
  tolerance: rounding,
});

check('signal.clipped.samples', {
  ...program,
  formula: 'signal/clipped',
  source: { key: 'scipy', locator: 'numpy.clip of the sweep' },
  given: { place: places },
  got: ({ place }) => at(clipped(moving(), 0.4), place),
  expected: fixtures.clipped,
  tolerance: rounding,
});

const anew = {
  key: 'scipy',
  locator: 'numpy and scipy.signal.upfirdn, after the definition, random words of an own Threefry',
};
const settled = { absolute: 2e-9, why: 'the power of slow levels is taken as settled after five interpolations' };
const starts = fixtures.pink.map(({ from }) => from);
for (const from of starts) {
  const given = { from: { value: from, unit: 'samples' }, seed: { value: 7, unit: '1' } };
  check(`signal.pink.samples.${from}`, {
    ...program,
    formula: 'signal/pinkNoise',
    source: anew,
    given,
    got: ({ seed }) => samplesOf(pinkNoise({ seed }), from, 5),
    expected: fixtures.pink.find((one) => one.from === from)!.samples,
    tolerance: settled,
  });
  check(`signal.programme.samples.${from}`, {
    ...program,
    formula: 'signal/simulatedProgramme',
    source: anew,
    given,
    got: ({ seed }) => samplesOf(simulatedProgramme({ seed }), from, 5),
    expected: fixtures.programme.find((one) => one.from === from)!.samples,
    tolerance: settled,
  });
}

check('signal.pink.samples.slow', {
  ...program,
  formula: 'signal/pinkNoise',
  source: anew,
  given: { sampleRate: { value: 2000, unit: 'Hz' } },
  got: ({ sampleRate }) => samplesOf(pinkNoise({ seed: 7 }), 12_345, 5, sampleRate),
  expected: fixtures.pink2k,
  tolerance: settled,
});
