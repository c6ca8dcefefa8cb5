import {
  type DisplacementPeak,
  type Frequency,
  type FrequencyInput,
  type Level,
  positive,
  readFields,
  si,
  type VoltageRms,
  type VoltageRmsInput,
} from '@airspring/core/quantity';
import type { Simulated } from '../simulation/index.js';
import { type BurstOptions, readBurst } from './burst-options.js';
import { type BurstRun, burstRunner } from './burst-runner.js';
import type { DistortionThresholds } from './distortion-thresholds.js';

/** How much distortion a burst has in a band. */
export interface BandLevel {
  /** Of the band. */
  readonly name: string;
  /** Greatest line in the band re that of the tone, dB; at least −300. */
  readonly level: number;
  readonly threshold: number;
}

/** What a system did in a burst. A plain record. */
export interface PlayedBurst {
  readonly frequency: Frequency;
  /** That of a sine with the peak of the burst. */
  readonly driveVoltageRms: VoltageRms;
  /** Rms level of a steady sine that is as strong as the tone of the burst, at 1 m in half space. */
  readonly levelHalfSpace: Level;
  /** Level of the greatest pressure at an instant. */
  readonly peakLevelHalfSpace: Level;
  readonly bands: readonly BandLevel[];
  /** How far the cone went, in either direction. */
  readonly displacementPeak: DisplacementPeak;
  /** Whether that is beyond the reach of a curve: the result is then a guess. */
  readonly beyondReach: boolean;
  /** False if a sample has no solution. */
  readonly isSolved: boolean;
}

const REFERENCE_PRESSURE = 20e-6;
const level = (pressure: number) => si('level', 20 * Math.log10(Math.max(pressure, 1e-20) / REFERENCE_PRESSURE));

/** What a run tells, where the greatest line of a burst of 1 V is known. */
export function told(
  { spectrum, peak, inmost, outmost, isSolved, beyondReach }: BurstRun,
  { frequency, voltagePeak, tone }: Readonly<Record<'frequency' | 'voltagePeak' | 'tone', number>>,
  { bands }: DistortionThresholds,
): PlayedBurst {
  return {
    frequency: si('frequency', frequency),
    driveVoltageRms: si('voltageRms', voltagePeak / Math.SQRT2),
    levelHalfSpace: level(spectrum.tone / (tone * Math.SQRT2)),
    peakLevelHalfSpace: level(peak[0]!),
    bands: bands.map(({ name, level: threshold }, i) => ({ name, level: spectrum.levels[i]!, threshold })),
    displacementPeak: si('displacementPeak', Math.max(-inmost, outmost)),
    beyondReach,
    isSolved,
  };
}

/**
 * A shaped tone burst through a system, its level, and its distortion band by band, in the manner of CTA-2010:
 *
 * $$ L_k = 20\log_{10}\frac{\max_{f \in k}|P(f)|}{\max_{f_0/2 \le f < 3f_0/2}|P(f)|},\qquad
 *    L = 20\log_{10}\frac{\max|P|}{\sqrt2\,\max|X|\cdot 20\,\mathrm{\mu Pa}} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $P$ | | Pa·s | spectrum of the pressure at 1 m in half space, burst and decay |
 * | $X$ | | s | spectrum of a burst with a peak of 1 |
 * | $k$ | `thresholds` | | a band above the tone |
 * | $L_k$ | `bands` | dB | level of the distortion re the tone |
 *
 * The window of the burst has a spectrum of its own, 41 dB below the tone at half above its frequency and less farther up. Where a box
 * plays that louder than the tone, as below its tuning, even a linear box has as much in its bands: a measurement cannot tell it
 * from distortion, so it is left in. Played without models, a burst shows it alone.
 *
 * @validity as `compileNonlinear`, with 512 samples in a cycle. How the standard reads its levels was not seen: the greatest line is
 *   common practice
 * @neglects noise, the room, and the heat of one burst; decay that is longer than seven bursts
 * @returns the level, the bands and the travel
 * @throws InputError those of `compileNonlinear`, `shapedBurst`, and of the thresholds
 * @source ponteggia2013 test signal and its measurement
 * @example playBurst(box, { frequency: '31.5 Hz', driveVoltageRms: '20 V', stiffness })
 */
export function playBurst(
  system: Simulated,
  {
    frequency: tone,
    driveVoltageRms: drive,
    ...options
  }: BurstOptions & {
    readonly frequency: FrequencyInput;
    /** That of a sine with the peak of the burst. */
    readonly driveVoltageRms: VoltageRmsInput;
  },
): PlayedBurst {
  const { frequency, driveVoltageRms } = readFields('burst', { frequency: tone, driveVoltageRms: drive }, shape);
  const choices = readBurst(options);
  const { tone: unit, run } = burstRunner(system, frequency, [], choices);
  const voltagePeak = Math.SQRT2 * driveVoltageRms;
  return told(run(voltagePeak), { frequency, voltagePeak, tone: unit }, choices.thresholds);
}

const shape = { frequency: positive('frequency'), driveVoltageRms: positive('voltageRms') };
