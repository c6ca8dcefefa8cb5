import { type Fault, type Impossible, impossible, refuse } from '@airspring/core/fault';
import type { Programme } from '@airspring/core/limit';
import {
  type Frequency,
  type FrequencyInput,
  optional,
  positive,
  readFields,
  si,
  type Time,
  type TimeInput,
} from '@airspring/core/quantity';
import { programmeOfSpectrum } from './programme-of-spectrum.js';
import type { Signal } from './signal.js';
import { type Band, thirdOctaves } from './third-octaves.js';
import { type Heard, type Spectrum, welch } from './welch.js';

/** What a piece of sound is to a loudspeaker: how its power is spread over frequency, and how far its peaks stand out. */
export interface MeasuredProgramme {
  readonly ok: true;
  /** Crest factor and shares of the spectrum as one value, as the limits of core take it. */
  readonly programme: Programme;
  readonly duration: Time;
  /** Greatest magnitude of a sample, in the unit of the signal. */
  readonly peak: number;
  readonly rms: number;
  /** Third octaves that the spectrum resolves, from the lowest. */
  readonly bands: readonly Band[];
  readonly spectrum: Spectrum;
}

/** How programme is listened to. */
export interface ListeningOptions {
  readonly sampleRate: FrequencyInput;
  /** Distance of the lines of the spectrum at most; default 1 Hz. A segment lasts at least one over it. */
  readonly resolution?: FrequencyInput | undefined;
}

/** A measurement of programme that is taken in block by block, in constant memory. */
export interface Listening {
  readonly start: () => Heard;
  /** Takes the next block. A kernel: it checks nothing. */
  readonly take: (heard: Heard, block: Float64Array) => void;
  /** What was heard so far, or why it is no programme: `silence`, or a `constant`. */
  readonly programme: (heard: Heard) => MeasuredProgramme | Impossible;
}

const shape = { sampleRate: positive('frequency'), resolution: optional(positive('frequency')) };
const mostSamples = 2 ** 20;
/** Peaks up to this are silence: 180 dB below full scale. */
const SILENCE = 1e-9;

/**
 * Prepares the measurement of programme: crest factor, and power spectral density by the method of Welch.
 *
 * $$ S(f_k) = \frac{2}{M f_s \sum w^2} \sum_{m=1}^{M} \left|\sum_n w_n x_{n + mN/2}\, e^{-2\pi j k n/N}\right|^2 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_s$ | `sampleRate` | Hz | sample rate |
 * | $N$ | `resolution` | 1 | samples of a segment: the power of two from sample rate over resolution, at least 4 |
 * | $w$ | | 1 | Hann window |
 * | $M$ | | 1 | segments, each half over the one before it |
 *
 * Sound that is shorter than one segment is one segment of its own length, and its bands and its programme are those of what is left
 * without its mean. What is left after the last whole segment counts in peak
 * and rms alone. Peaks between samples are not told. The crest factor is that of what changes: a constant part moves no air.
 *
 * @validity finite samples. A steady tone appears as wide as one and a half lines.
 * @neglects how the spectrum changes over the piece
 * @returns a kernel for blocks of samples
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`
 * @source welch1967 (method)
 * @example const { start, take, programme } = compileListening({ sampleRate: '48 kHz' });
 */
export function compileListening(options: ListeningOptions): Listening {
  const { sampleRate, resolution = si('frequency', 1) } = readFields('listening', options, shape);
  const length = 2 ** Math.max(2, Math.ceil(Math.log2(sampleRate / resolution) - 1e-12));
  refuse(tooLong(length, resolution));
  const { start, take, spectrum, changing, resolved } = welch(sampleRate, length);
  const programme = (heard: Heard): MeasuredProgramme | Impossible => {
    refuseOdd(heard);
    const peak = Math.max(heard.greatest, -heard.least);
    if (peak <= SILENCE) return impossible('silence', 'There is no sound: no sample is greater than 10⁻⁹.');
    const found = changing(heard);
    const rms = Math.sqrt(heard.sumOfSquares / heard.samples);
    const played = programmeOfSpectrum(found, crestFactorOf(heard), rms);
    if (played === undefined)
      return impossible(
        'constant',
        'There is no sound: nothing of it changes, from the second line of its spectrum up.',
      );
    return {
      ok: true,
      programme: played,
      duration: si('time', heard.samples / sampleRate),
      peak,
      rms,
      bands: thirdOctaves(found, rms * rms, resolved(heard)),
      spectrum: spectrum(heard),
    };
  };
  return { start, take, programme };
}

/** What never changes moves no air: up to this part of the rms value, what is left beside it is rounding. */
const STILL = 1e-6;

/** Peak over rms of what changes: without the constant part, which would hide how far the peaks stand out. */
function crestFactorOf({ samples, sum, sumOfSquares, greatest, least }: Heard): number {
  const mean = sum / samples;
  const square = sumOfSquares / samples;
  const changing = square - mean * mean;
  if (!(changing > STILL ** 2 * square)) return 1;
  return Math.max(greatest - mean, mean - least) / Math.sqrt(changing);
}

function refuseOdd({ sum, sumOfSquares }: Heard): void {
  if (Number.isFinite(sum) && Number.isFinite(sumOfSquares)) return;
  const remedy = 'Correct the signal.';
  refuse([{ code: 'not-finite', path: 'samples', got: sum, expected: 'finite samples, and finite squares', remedy }]);
}

function tooLong(length: number, resolution: Frequency): readonly Fault[] {
  if (length <= mostSamples) return [];
  const expected = `a segment of at most ${mostSamples} samples`;
  const remedy = 'Give a coarser resolution or a lower sample rate.';
  return [{ code: 'out-of-range', path: 'listening.resolution', got: resolution, expected, remedy }];
}

/** How long a signal is listened to. */
export interface ProgrammeOptions extends ListeningOptions {
  readonly duration: TimeInput;
}

const BLOCK = 32_768;

/**
 * Crest factor and spectrum of a signal over a stretch from its start.
 *
 * @validity as `compileListening`, which says how
 * @returns the programme, or why there is none: `silence`, or a `constant`
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`
 * @source welch1967 (method)
 * @example programmeOf(pinkNoise({ seed: 7 }), { sampleRate: '48 kHz', duration: '60 s' }) // programme.crestFactor about 4.5
 */
export function programmeOf(
  signal: Signal,
  { duration, ...options }: ProgrammeOptions,
): MeasuredProgramme | Impossible {
  const read = readFields('programme', { duration, sampleRate: options.sampleRate }, programmeShape);
  const { start, take, programme } = compileListening(options);
  const block = signal.compile(read.sampleRate);
  const heard = start();
  const samples = Math.round(read.duration * read.sampleRate);
  for (let from = 0; from < samples; from += BLOCK) {
    const out = new Float64Array(Math.min(BLOCK, samples - from));
    block(from, out);
    take(heard, out);
  }
  return programme(heard);
}

const programmeShape = { duration: positive('time'), sampleRate: positive('frequency') };
