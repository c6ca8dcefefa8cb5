/** Words with lengths among them, m: whoever reads them has them in a unit of one's own. */
export type LengthWords = readonly (string | { readonly metres: number })[];

/** Says that a number was computed outside the range in which its formula was published or measured. */
export interface Warning {
  readonly code: 'outside-validity';
  /** The quantity that is outside its range, such as `ka` or `temperature`. */
  readonly path: string;
  readonly got: number;
  /** The range, in words. */
  readonly expected: string;
}

/** Why something cannot be built. This is a result, not an error. */
export interface Reason {
  /** A short, stable word for programs, such as `vent-too-long`. */
  readonly code: string;
  /** One sentence for people, with the deciding numbers. */
  readonly text: string;
  /** The same sentence with its lengths in metres, for people who read them in another unit. */
  readonly words?: LengthWords;
}

/** What cannot be built, and why. */
export interface Impossible {
  readonly ok: false;
  readonly because: readonly Reason[];
}

/** Makes an {@link Impossible} with one reason. */
export const impossible = (code: string, text: string): Impossible => ({ ok: false, because: [{ code, text }] });
