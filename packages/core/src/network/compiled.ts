import type { ComplexColumn } from '../numeric/index.js';
import type { Topology } from './element.js';
import type { Slots } from './slots.js';
import type { SweepRows } from './sweep.js';

/** A topology, compiled once by either method. Any number of networks can be made from it. */
export interface CompiledTopology {
  readonly topology: Topology;
  readonly slots: Slots;
  /** Names of the readings in the order of the columns, with `radiatedFlow` first if there are outlets. */
  readonly probes: readonly string[];
  /** A network with these numbers, in the order of the slots. `inReference` leaves out elements that are not in the reference level. */
  readonly network: (values: Float64Array, inReference?: boolean) => CompiledNetwork;
}

/**
 * A way to compile a topology; `undefined` for a topology that it cannot compile. Polynomials are swept by the kernel that is
 * passed in; default `sweepRows`.
 */
export type Compile = (topology: Topology, sweepRows?: SweepRows) => CompiledTopology | undefined;

/** A compiled topology with numbers, ready to be swept. Its functions are kernels: frequencies in Hz are not checked; the caller passes in the columns, per volt of drive. */
export interface CompiledNetwork {
  readonly probes: readonly string[];
  /** Replaces the numbers by others of the same topology. */
  readonly load: (values: Float64Array) => void;
  /** Fills a column for each probe. Returns the first place at which nothing damps the network, or −1. */
  readonly sweep: (frequencies: Float64Array, out: readonly ComplexColumn[]) => number;
  /** Fills d ln y / d ln f of one probe y: the real part is the slope of ln |y|, the imaginary part that of the phase. */
  readonly slope: (probe: number, frequencies: Float64Array, out: ComplexColumn) => number;
  /** The polynomials, where the network has no element over frequency and no delay; in the reference, none that it keeps. */
  readonly polynomials?: Polynomials;
}

/** Coefficients of rising powers of s / scale, row by row: the denominator first, then each probe. */
export interface Polynomials {
  readonly coefficients: Float64Array;
  readonly width: number;
  readonly scale: number;
}
