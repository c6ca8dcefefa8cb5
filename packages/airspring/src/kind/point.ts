/**
 * A point of the search, all in SI units: the net volume, then the values of the acoustic axes, then those of the
 * geometric axes, in the order of the variant's lists, then the span where there is one.
 */
export type Point = readonly number[];

/** A number that the search may choose. */
export interface Axis {
  readonly name: string;
  /** The stated bounds. Each of them is also a value to try. */
  readonly from: number;
  readonly to: number;
  /** Ratio between neighbouring values on the lattice of the survey. */
  readonly ratio: number;
  /** The value in a design is a whole multiple of this unit, or one of the bounds. */
  readonly unit: number;
  /** When no box meets the brief, the search looks for another brief up to this many times `to`; default 1. */
  readonly beyond?: number;
}

/** A number that a builder makes, and what it is at a point. */
export interface Made extends Pick<Axis, 'from' | 'to' | 'unit' | 'beyond'> {
  readonly of: (point: Point) => number;
}

/** An inner edge of the box that is a number of its points as well, because a part reaches from panel to panel. */
export interface Span extends Omit<Axis, 'unit'> {
  readonly edge: 0 | 1 | 2;
}

/** The parts of a kind at one point. */
export interface Parts {
  /** Length of the longest part that needs room, m; compared with `Variant.room`. Below zero there is no such part. */
  extent: number;
  /** Air that the parts take up in the box, m³. */
  taken: number;
  /** Work in addition to the box itself, as metres of vent to print. */
  effort: number;
}
