/** A number was computed, but outside the range in which its formula was published or measured. */
export interface Warning {
  readonly code: 'outside-validity';
  /** The quantity that left its range: `ka`, `temperature`. */
  readonly path: string;
  readonly got: number;
  /** The range, in words. */
  readonly expected: string;
}

/** Why something cannot be built: a result, not an error. */
export interface Reason {
  /** Short and stable, for programs: `vent-too-long`. */
  readonly code: string;
  /** One sentence for people, with the numbers that decide. */
  readonly text: string;
}

/** What cannot be built, and why. */
export interface Impossible {
  readonly ok: false;
  readonly because: readonly Reason[];
}

/** Makes an {@link Impossible} of one reason. */
export const impossible = (code: string, text: string): Impossible => ({ ok: false, because: [{ code, text }] });
