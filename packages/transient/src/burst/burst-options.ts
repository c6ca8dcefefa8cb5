import { type Fault, refuse } from '@airspring/core/fault';
import { given, optional, positive, type RatioInput, readFields } from '@airspring/core/quantity';
import { burstCycles } from '../signal/index.js';
import type { NonlinearOptions } from '../simulation/index.js';
import { type DistortionThresholds, widerThresholds } from './distortion-thresholds.js';

/** What the driver and its vents do far out. */
type Models = Omit<
  NonlinearOptions,
  'sampleRate' | 'outputs' | 'oversampling' | 'decimation' | 'heat' | 'coils' | 'balance'
>;

/** How a burst is played: what the driver does far out, and which distortion it may have. */
export interface BurstOptions extends Models {
  /** Default `widerThresholds`. */
  readonly thresholds?: DistortionThresholds;
  /** As in `shapedBurst`, from 1 to 100; default 6.5. */
  readonly cycles?: RatioInput | undefined;
}

/** The same, read. */
export interface BurstChoices {
  readonly thresholds: DistortionThresholds;
  readonly cycles: number;
  readonly models: Models;
}

/** Samples in a cycle of the tone: the tenth harmonic has fifty of them. */
export const SAMPLES_PER_CYCLE = 512;
const MOST_CYCLES = 100;
const HIGHEST = SAMPLES_PER_CYCLE / 4;

const shape = { thresholds: optional(given<DistortionThresholds>()), cycles: optional(positive('ratio')) };

/** Reads thresholds and cycles; the models are read where they are simulated. */
export function readBurst(options: BurstOptions): BurstChoices {
  const { thresholds: asked, cycles: many, ...models } = options;
  const read = readFields('burst', { thresholds: asked, cycles: many }, shape);
  const { thresholds = widerThresholds, cycles = burstCycles } = read;
  const faults: Fault[] = [];
  const fault = (code: Fault['code'], path: string, got: unknown, expected: string, remedy: string) =>
    faults.push({ code, path: `burst.${path}`, got, expected, remedy });
  if (cycles < 1 || cycles > MOST_CYCLES)
    fault('out-of-range', 'cycles', cycles, `from 1 to ${MOST_CYCLES}`, 'Give a number in that range.');
  const { bands } = thresholds;
  if (!Array.isArray(bands) || bands.length === 0)
    fault('empty', 'thresholds.bands', bands, 'at least one band', 'Give bands above the tone.');
  else
    bands.forEach(({ from, to, level }, i) => {
      const at = `thresholds.bands[${i}]`;
      if (!Number.isFinite(level)) fault('not-finite', `${at}.level`, level, 'a level in dB', 'Give one.');
      if (!(from >= 1 && to > from && to <= HIGHEST)) {
        const expected = `ends from 1 to ${HIGHEST} times the tone, the lower first`;
        fault('out-of-range', at, `${from} to ${to}`, expected, 'Give them as multiples of the tone.');
      }
    });
  refuse(faults);
  return { thresholds, cycles, models };
}
