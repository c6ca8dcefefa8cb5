/** A value and where it is. */
export interface WorkPoint {
  readonly frequency: number;
  readonly value: number;
}

/** The impedance of a box. */
export interface WorkImpedance {
  /** What it is, and what to measure, in a paragraph. */
  readonly text: string;
  readonly frequencies: readonly number[];
  readonly magnitude: readonly number[];
  readonly peaks: readonly WorkPoint[];
  readonly dips: readonly WorkPoint[];
}
