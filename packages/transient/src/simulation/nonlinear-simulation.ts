import type { ThermalModel } from '@airspring/core/limit';
import type { Frequency, FrequencyInput } from '@airspring/core/quantity';
import type { CoilCurve, Spring } from './curve.js';
import type { Decimation } from './decimation.js';
import type { MomentaryLoss } from './momentary-loss.js';
import type { Motion } from './motion.js';

/** What a nonlinear simulation adds to a network, and how it runs. What is left out stays as it is in the network. */
export interface NonlinearOptions {
  readonly sampleRate: FrequencyInput;
  /**
   * Probes of the network, `radiatedFlow`, `pressure` (Pa at 1 m), `displacement` (m), `integral <probe>` of a velocity at a spring (m),
   * `coilRise` and `magnetRise` (K).
   */
  readonly outputs: readonly string[];
  /** Steps a sample; default 1. */
  readonly oversampling?: number;
  /** How the samples between are left out; default {@link filteredDecimation}. */
  readonly decimation?: Decimation;
  readonly forceFactor?: CoilCurve;
  readonly stiffness?: Spring;
  /** What stops the cone, beside the suspension. */
  readonly stop?: Spring;
  /** Of the inductance `Le`. */
  readonly inductance?: CoilCurve;
  /** Losses of air masses, by the names of these elements: `{ vent: … }`. */
  readonly losses?: Readonly<Record<string, MomentaryLoss>>;
  /** How the coil of one driver warms up, as `thermalModel` of core makes it; default not at all. */
  readonly heat?: ThermalModel;
  /** Coils that share the heat; default as many as the box has drivers, and one for a bare network. */
  readonly coils?: number;
  /** Whether blocks report what the drive gave and what was lost; slower by a third. */
  readonly balance?: boolean;
}

/** What happened in a block. */
export interface BlockReport {
  /** False if any sample has no solution: nothing moved then, and the sample repeats the state before. */
  readonly ok: boolean;
  /** Samples without a solution. */
  readonly unsolved: number;
  /** Steps of Newton's method in all. */
  readonly steps: number;
  /** Times that the way to a solution was halved. */
  readonly halved: number;
  /** The farthest displacement, m, and whether it is beyond the reach of a curve. */
  readonly farthest: number;
  readonly beyondReach: boolean;
  /** J since the start, where `balance` was asked for: given by the drive, lost, and stored at the end of the block. */
  readonly balance?: { readonly given: number; readonly lost: number; readonly stored: number };
}

/** A nonlinear system, compiled for blocks of samples. */
export interface NonlinearSimulation {
  readonly outputs: readonly string[];
  readonly sampleRate: Frequency;
  /** By how much outputs come later than their samples, s: the delay of the decimation. */
  readonly delay: number;
  /** A system at rest. One simulation runs any number of them. */
  readonly start: () => Motion;
  /** Fills a block of each output from a block of the drive, V. The motion goes on from block to block. */
  readonly run: (motion: Motion, drive: Float64Array, out: readonly Float64Array[]) => BlockReport;
  /** What is stored in a motion, J: in masses, springs, air and coil. Heat is not counted. */
  readonly energy: (motion: Motion) => number;
}
