import { refuse } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { shapedBurst } from '../signal/index.js';
import { compileNonlinear, type Simulated } from '../simulation/index.js';
import { type BurstChoices, SAMPLES_PER_CYCLE } from './burst-options.js';
import { type BurstSpectrum, burstSpectrum } from './burst-spectrum.js';

/** The decay is followed until it has fallen to this share of the greatest value, and for at most seven durations of the burst. */
const [DECAYED, LONGEST] = [1e-4, 7];

/** What a system did in a burst and in its decay. */
export interface BurstRun {
  readonly spectrum: BurstSpectrum;
  /** Greatest magnitude of each output. */
  readonly peak: Float64Array;
  /** The least and the greatest displacement, m. */
  readonly inmost: number;
  readonly outmost: number;
  readonly isSolved: boolean;
  readonly beyondReach: boolean;
}

/** The first two outputs of each run. */
export const ofEachRun = ['pressure', 'displacement'] as const;

/**
 * Prepares bursts of one frequency and of any drive through one system. `tone` is the greatest line of a burst of 1 V, peak; `run` plays
 * one of that peak voltage. All frequencies have the same samples in a cycle, so that they have the same error.
 */
export function burstRunner(
  system: Simulated,
  frequency: number,
  outputs: readonly string[],
  { thresholds, cycles, models }: BurstChoices,
) {
  refuseHigh(frequency);
  const sampleRate = si('frequency', SAMPLES_PER_CYCLE * frequency);
  const signal = shapedBurst({ frequency: si('frequency', frequency), cycles });
  const simulation = compileNonlinear(system, { ...models, sampleRate, outputs: [...ofEachRun, ...outputs] });
  const burst = Math.ceil(SAMPLES_PER_CYCLE * cycles);
  const shape = new Float64Array(burst);
  signal.compile(sampleRate)(0, shape);
  const longest = (1 + LONGEST) * burst;
  const spectrumOf = burstSpectrum(thresholds.bands, { frequency, sampleRate, burst, longest });
  const columns = simulation.outputs.map(() => new Float64Array(longest));
  const silence = new Float64Array(burst);

  const run = (voltagePeak: number): BurstRun => {
    const motion = simulation.start();
    const peak = new Float64Array(columns.length);
    const drive = shape.map((u) => voltagePeak * u);
    let [isSolved, beyondReach, from] = [true, false, 0];
    for (let isLoud = true; from < longest && isLoud; from += burst) {
      const block = columns.map((column) => column.subarray(from, from + burst));
      const report = simulation.run(motion, from === 0 ? drive : silence, block);
      isSolved &&= report.ok;
      beyondReach ||= report.beyondReach;
      const greatest = block.map((column) => column.reduce((most, value) => Math.max(most, Math.abs(value)), 0));
      greatest.forEach((value, i) => {
        peak[i] = Math.max(peak[i]!, value);
      });
      isLoud = ofEachRun.some((_, i) => greatest[i]! > DECAYED * peak[i]!);
    }
    const [pressure, displacement] = columns.map((column) => column.subarray(0, from)) as [Float64Array, Float64Array];
    const inmost = displacement.reduce((least, x) => Math.min(least, x), 0);
    const outmost = displacement.reduce((most, x) => Math.max(most, x), 0);
    return { spectrum: spectrumOf(pressure), peak, inmost, outmost, isSolved, beyondReach };
  };
  return { tone: spectrumOf(shape).tone, run };
}

/** The highest frequency of a burst, Hz, far above those of bass: its sample rate must be one that is accepted. */
const HIGHEST = 10_000;

function refuseHigh(frequency: number): void {
  if (frequency <= HIGHEST) return;
  const expected = `at most ${HIGHEST} Hz`;
  refuse([{ code: 'out-of-range', path: 'burst.frequency', got: frequency, expected, remedy: 'Lower it.' }]);
}
