/** Spectra and crest factors against an independent program, and noise against its own definition. */
import {
  compileListening,
  type MeasuredProgramme,
  pinkNoise,
  programmeOf,
  type Signal,
  simulatedProgramme,
  simulatedProgrammeWeights,
} from '@airspring/transient/signal';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import { fixtures } from './fixtures.js';

const RATE = 2000;
const { welch } = fixtures;

/** Two tones, a constant, and a chirp that fills all bands, as the script beside has them. */
const tones: Signal = {
  name: 'tones and a chirp',
  sources: [],
  compile: (sampleRate) => (from, out) => {
    for (let i = 0; i < out.length; i++) {
      const angle = (2 * Math.PI * (from + i)) / sampleRate;
      out[i] =
        0.1 + 0.7 * Math.sin(40 * angle) + 0.2 * Math.sin(333.3 * angle) + 0.1 * Math.sin(0.001 * (from + i) ** 2);
    }
  },
};
const heard = (samples: number) => {
  const duration = `${samples / RATE} s` as const;
  const programme = programmeOf(tones, { sampleRate: '2 kHz', resolution: '2 Hz', duration });
  if (!programme.ok) throw new Error('silent');
  return programme;
};
/** The same, taken in by blocks of odd sizes. */
function taken(samples: number, sign = 1): MeasuredProgramme {
  const { start, take, programme } = compileListening({ sampleRate: '2 kHz', resolution: '2 Hz' });
  const so = start();
  const block = tones.compile(RATE);
  for (let from = 0, size = 1; from < samples; from += size, size = (7 * size) % 997) {
    const out = new Float64Array(Math.min(size, samples - from));
    block(from, out);
    take(
      so,
      out.map((value) => sign * value),
    );
  }
  const found = programme(so);
  if (!found.ok) throw new Error('silent');
  return found;
}

/** Turned over, the greatest distance from the mean is on the other side. */
const turned = (samples: number) => taken(samples, -1);

const scipy = { key: 'scipy', locator: 'scipy.signal.welch, Hann window, half overlap, no detrending' } as const;
const program = { source: scipy, status: 'derived', kind: 'program' } as const;
const rounding = { relative: 1e-11, why: 'double precision on both sides, weak lines beside strong ones' };

for (const [name, formula, listen] of [
  ['programme', 'signal/programmeOf', heard],
  ['listening', 'signal/compileListening', taken],
  ['listening-turned', 'signal/compileListening', turned],
] as const) {
  check(`signal.${name}.density`, {
    ...program,
    formula,
    given: { line: { value: welch.lines, unit: '1' }, samples: { value: 7300, unit: '1' } },
    got: ({ line, samples }) => listen(samples).spectrum.density[line]!,
    expected: welch.density,
    unit: '1/Hz',
    tolerance: rounding,
  });
  check(`signal.${name}.density.short`, {
    ...program,
    formula,
    given: { line: { value: welch.shortLines, unit: '1' }, samples: { value: 600, unit: '1' } },
    got: ({ line, samples }) => listen(samples).spectrum.density[line]!,
    expected: welch.short,
    unit: '1/Hz',
    tolerance: rounding,
  });
  check(`signal.${name}.bands`, {
    ...program,
    formula,
    given: { samples: { value: 7300, unit: '1' } },
    got: ({ samples }) => listen(samples).bands.map(({ meanSquare }) => meanSquare),
    expected: welch.meanSquares,
    unit: '1',
    tolerance: { relative: 1e-11, why: 'double precision; the script takes differences of a running sum' },
  });
  check(`signal.${name}.shares`, {
    ...program,
    formula,
    given: { samples: { value: 7300, unit: '1' } },
    got: ({ samples }) => listen(samples).bands.map(({ share }) => share),
    expected: welch.meanSquares.map((meanSquare) => meanSquare / welch.rms ** 2),
    unit: '1',
    tolerance: { relative: 1e-11, why: 'double precision; the script takes differences of a running sum' },
  });
  check(`signal.${name}.places`, {
    ...program,
    formula,
    given: { samples: { value: 7300, unit: '1' } },
    got: ({ samples }) => {
      const { bands, spectrum } = listen(samples);
      return [...bands.map(({ frequency }) => frequency), ...spectrum.frequencies.slice(1)];
    },
    expected: [...welch.bands, ...Array.from({ length: 512 }, (_, i) => ((i + 1) * RATE) / 1024)],
    unit: 'Hz',
    tolerance: { relative: 1e-14, why: 'double precision' },
  });
  for (const [field, expected] of [
    ['share', welch.shares],
    ['frequencies', welch.cells],
  ] as const)
    check(`signal.${name}.programme.${field}`, {
      ...program,
      formula,
      given: { samples: { value: 7300, unit: '1' }, of: { value: field, unit: '' } },
      got: ({ samples }) => listen(samples).programme[field],
      expected,
      unit: field === 'share' ? '1' : 'Hz',
      tolerance: { absolute: field === 'share' ? 1e-14 : 1e-11, why: 'double precision; differences of a running sum' },
    });
  check(`signal.${name}.sizes`, {
    ...program,
    formula,
    given: { samples: { value: 7300, unit: '1' } },
    got: ({ samples }) => {
      const { peak, rms, programme, duration } = listen(samples);
      return [peak, rms, programme.crestFactor, duration];
    },
    expected: [welch.peak, welch.rms, welch.crestFactor, 3.65],
    unit: '1, 1, 1, s',
    tolerance: { relative: 1e-14, why: 'double precision' },
  });
}

const heardOf = (signal: Signal, sampleRate: '2 kHz' | '48 kHz', duration: '20 s' | '120 s') => {
  const programme = programmeOf(signal, { sampleRate, duration });
  if (!programme.ok) throw new Error('silent');
  return programme.bands.map(({ frequency, share }) => ({ frequency, level: 10 * Math.log10(share) }));
};

check('signal.pink.slope', {
  formula: 'signal/pinkNoise',
  source: { key: 'voss1978', locator: 'definition: power in proportion to 1/f' },
  status: 'derived',
  kind: 'measured',
  given: { seed: { value: 7, unit: '1' } },
  got: ({ seed }) => {
    const above = heardOf(pinkNoise({ seed }), '48 kHz', '20 s').filter(({ frequency }) => frequency > 300);
    const x = above.map(({ frequency }) => Math.log2(frequency));
    const [mx, my] = [mean(x), mean(above.map(({ level }) => level))];
    const slope = above.reduce((sum, { level }, i) => sum + (x[i]! - mx) * (level - my), 0);
    // A third octave of pink noise has the same power everywhere; its density falls with its width.
    return slope / x.reduce((sum, one) => sum + (one - mx) ** 2, 0) - 10 * Math.log10(2);
  },
  expected: -10 * Math.log10(2),
  unit: 'dB per octave',
  tolerance: { absolute: 0.02, why: 'third octaves from 300 Hz over 20 s scatter by up to 0.1 dB' },
});

const mean = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0) / numbers.length;

test('the spectrum of pink noise, summed from its filters, keeps within 0.1 dB of 3.01 dB per octave', () => {
  expect(fixtures.errors.pink48).toBeLessThan(0.021);
  expect(fixtures.errors.programme48).toBeLessThan(0.2);
  expect(fixtures.slope).toBeCloseTo(-10 * Math.log10(2), 4);
});

check('signal.programme.weights', {
  formula: 'signal/simulatedProgramme',
  source: { key: 'iec60268-1', locator: 'third octaves of the simulated programme, from memory, of low certainty' },
  status: 'memory',
  kind: 'standard',
  given: { seed: { value: 7, unit: '1' } },
  got: ({ seed }) => {
    const [weighted, pink] = [simulatedProgramme, pinkNoise].map((noise) => heardOf(noise({ seed }), '2 kHz', '120 s'));
    const difference = weighted!.map(({ frequency, level }, i) => ({ frequency, level: level - pink![i]!.level }));
    const top = difference.at(-1)!.level;
    return simulatedProgrammeWeights.slice(2, -1).map(({ frequency }) => nearest(difference, frequency).level - top);
  },
  expected: [-7.4, -5.2, -3.5, -2.3, -1.4, -0.9, -0.5],
  unit: 'dB',
  tolerance: { absolute: 0.25, why: 'a band is wide: its mean is not the level in its middle' },
});

const nearest = (bands: ReturnType<typeof heardOf>, frequency: number) =>
  bands.reduce((best, one) =>
    Math.abs(Math.log(one.frequency / frequency)) < Math.abs(Math.log(best.frequency / frequency)) ? one : best,
  );
