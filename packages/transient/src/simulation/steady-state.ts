import { type Fault, type Impossible, impossible, refuse } from '@airspring/core/fault';
import {
  count,
  type FrequencyInput,
  given,
  optional,
  positive,
  readFieldsInto,
  si,
  type VoltageRmsInput,
} from '@airspring/core/quantity';
import { type Harmonics, harmonicsOf } from './harmonics.js';
import type { Simulated } from './linear.js';
import { compileNonlinear } from './nonlinear.js';
import type { NonlinearOptions } from './nonlinear-simulation.js';

/** One sine of the drive. */
export interface Tone {
  /** Its frequency as a multiple of the base. */
  readonly multiple: number;
  readonly voltageRms: VoltageRmsInput;
}

/** A drive that repeats, and what is asked of its answer. */
export interface SteadyOptions
  extends Omit<NonlinearOptions, 'sampleRate' | 'heat' | 'coils' | 'balance' | 'oversampling' | 'decimation'> {
  /** How often the drive repeats: the frequency of one tone, or the greatest common divisor of several. */
  readonly base: FrequencyInput;
  readonly tones: readonly Tone[];
  /** Orders of the base; default 10 times the greatest multiple. */
  readonly orders?: number;
  /** Steps in a period; default as many as a rate of 96 kHz has, and at least 64 for each order. */
  readonly steps?: number;
  /** Periods after which it is given up; default 2000. */
  readonly mostPeriods?: number;
}

/** What repeats. */
export interface SteadyState {
  readonly ok: true;
  /** By output: harmonics by multiple of the base, in its SI unit. */
  readonly harmonics: Readonly<Record<string, Harmonics>>;
  /** By output: one period. */
  readonly period: Readonly<Record<string, Float64Array>>;
  /** Periods until it repeated. */
  readonly periods: number;
}

/** A period repeats where no output changes by more than this part of its greatest value. */
const REPEATS = 1e-9;

/**
 * The steady state of a nonlinear system under tones: run until each period is like the one before, then taken apart into harmonics.
 * Distortion is read off these, intermodulation with several tones.
 *
 * $$ |y_n - y_{n-N}| \le 10^{-9} \max |y| $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $N$ | `steps` | 1 | steps in a period |
 * | $y$ | `outputs` | SI | each output |
 *
 * @validity tones that are multiples of one base; a coil of one temperature
 * @neglects what does not come to rest within the stated periods
 * @returns harmonics and one period of each output, or `not-periodic`, or `unsolved`
 * @throws InputError those of {@link compileNonlinear} and of the tones
 * @source own (repetition of a period)
 * @example steadyState(box, { base: '30 Hz', tones: [{ multiple: 1, voltageRms: '10 V' }], outputs: ['pressure'] })
 */
export function steadyState(system: Simulated, options: SteadyOptions): SteadyState | Impossible {
  const { base, tones, orders, steps, mostPeriods = 2000, ...nonlinear } = options;
  const read = readSteady({ base, tones, orders, steps, mostPeriods });
  const simulation = compileNonlinear(system, { ...nonlinear, sampleRate: si('frequency', read.base * read.steps) });
  const drive = Float64Array.from({ length: read.steps }, (_, n) =>
    read.tones.reduce((sum, { multiple, voltageRms }) => {
      const angle = (2 * Math.PI * ((multiple * n) % read.steps)) / read.steps;
      return sum + Math.SQRT2 * voltageRms * Math.sin(angle);
    }, 0),
  );
  const motion = simulation.start();
  const periods = [0, 1].map(() => simulation.outputs.map(() => new Float64Array(read.steps)));
  for (let k = 1; k <= mostPeriods; k++) {
    const [now, before] = (k % 2 ? [periods[1], periods[0]] : periods) as [Float64Array[], Float64Array[]];
    const { ok, unsolved } = simulation.run(motion, drive, now);
    if (!ok) return impossible('unsolved', `${unsolved} steps of period ${k} have no solution; take more steps`);
    if (k === 1 || !now.every((column, i) => repeats(column, before[i]!))) continue;
    const entries = simulation.outputs.map((name, i) => [name, now[i]!] as const);
    return {
      ok: true,
      harmonics: Object.fromEntries(entries.map(([name, column]) => [name, harmonicsOf(column, read.orders)])),
      period: Object.fromEntries(entries),
      periods: k,
    };
  }
  return impossible(
    'not-periodic',
    `no period was like the one before within ${mostPeriods} periods of ${read.base} Hz`,
  );
}

function repeats(now: Float64Array, before: Float64Array): boolean {
  let [most, off] = [0, 0];
  for (let n = 0; n < now.length; n++) {
    most = Math.max(most, Math.abs(now[n]!));
    off = Math.max(off, Math.abs(now[n]! - before[n]!));
  }
  return off <= REPEATS * most;
}

const MOST_STEPS = 1_000_000;
const shape = {
  base: positive('frequency'),
  tones: given<readonly Tone[]>(),
  orders: optional(count(1000)),
  steps: optional(count(MOST_STEPS)),
  mostPeriods: count(1_000_000),
};
const toneShape = { multiple: count(1000), voltageRms: positive('voltageRms') };

function readSteady(input: object) {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, 'steady', input, shape);
  const list = read?.tones;
  if (read !== undefined && (!Array.isArray(list) || list.length === 0)) {
    const remedy = 'Give a tone: { multiple: 1, voltageRms: … }.';
    faults.push({ code: 'empty', path: 'steady.tones', got: list, expected: 'a list of tones', remedy });
  }
  const tones = (Array.isArray(list) ? list : []).flatMap((tone, i) => {
    const one = readFieldsInto(faults, `steady.tones[${i}]`, tone, toneShape);
    return one ? [one] : [];
  });
  refuse(faults);
  const { base, orders = 10 * Math.max(...tones.map(({ multiple }) => multiple)), steps } = read!;
  const most = Math.max(orders, ...tones.map(({ multiple }) => multiple));
  if (steps !== undefined && steps <= 2 * most) {
    const expected = `more than ${2 * most} steps, twice the greatest order`;
    const remedy = 'Give more steps or fewer orders.';
    refuse([{ code: 'out-of-range', path: 'steady.steps', got: steps, expected, remedy }]);
  }
  const least = Math.max(64 * orders, Math.ceil(96_000 / base));
  return { base, tones, orders, steps: steps ?? Math.min(MOST_STEPS, least) };
}
