import type { ComplexColumn } from '../numeric/index.js';
import type { Topology } from './element.js';
import type { Slots } from './slots.js';

/** A topology compiled once, by whichever road: any number of networks are made from it. */
export interface CompiledTopology {
  readonly topology: Topology;
  readonly slots: Slots;
  /** Names of what is read, in the order of the columns: `radiatedFlow` first where there are outlets. */
  readonly probes: readonly string[];
  /** A network with these numbers, in the order of the slots. `inReference` leaves out what the reference level does without. */
  readonly network: (values: Float64Array, inReference?: boolean) => CompiledNetwork;
}

/** A way to compile a topology; `undefined` for one that it cannot take. */
export type Compile = (topology: Topology) => CompiledTopology | undefined;

/** A compiled topology with numbers, ready to be swept. Kernels: frequencies in Hz, unchecked; columns handed in, per volt of drive. */
export interface CompiledNetwork {
  readonly probes: readonly string[];
  /** Takes other numbers of the same topology. */
  readonly load: (values: Float64Array) => void;
  /** Fills a column for each probe. Returns the first place at which nothing damps the network, or −1. */
  readonly sweep: (frequencies: Float64Array, out: readonly ComplexColumn[]) => number;
  /** Fills d ln y / d ln f of one probe y: the real part of its logarithm's slope, and the imaginary part, which is that of its phase. */
  readonly slope: (probe: number, frequencies: Float64Array, out: ComplexColumn) => number;
  /** The polynomials, where the network has no element over frequency and no delay; in the reference, none that it keeps. */
  readonly polynomials?: Polynomials;
}

/** Row by row the coefficients of powers of s / scale, rising: the denominator first, then each probe. */
export interface Polynomials {
  readonly coefficients: Float64Array;
  readonly width: number;
  readonly scale: number;
}
