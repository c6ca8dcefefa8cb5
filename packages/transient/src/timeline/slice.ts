/** A slice of a piece of sound, and what a system did in it. A plain record. */
export interface Slice {
  /** When it begins, s from the start of the piece. */
  readonly from: number;
  /** s. The last slice of a piece may be shorter than the others. */
  readonly duration: number;
  /** Greatest magnitude of each output by its name; `voltage` is that at the terminals. SI. */
  readonly peak: Readonly<Record<string, number>>;
  readonly rms: Readonly<Record<string, number>>;
  /** How much of each limit is used, in the order of `limits`: 1 where it is just kept. */
  readonly used: readonly number[];
}

/** What is measured of a slice before it is judged, an element for each output. */
export interface Measured {
  readonly peak: Float64Array;
  /** Mean square of the output, drawn over a long time. */
  readonly lasting: Float64Array;
  /** Half of the longest stroke of the air, m, for each output that is an air speed; 0 for the others. */
  readonly airTravel: Float64Array;
}

/** A limit, and how much of it is used in a slice. What is used grows with the drive in proportion. */
export interface Judge {
  readonly name: string;
  readonly basis: string;
  readonly used: (measured: Measured) => number;
}
