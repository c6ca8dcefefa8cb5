import type { Biquad } from '@airspring/core/filter';
import type { Meaning, Phrase } from '../kind/phrase.js';
import type { GentleHighPass } from './gentlest.js';

/** A stretch of frequencies and the limit that binds there. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly binding: string;
}

/** The sentences that a kind adds to the report of a design. */
export interface Told {
  /** Stands in the first paragraph, after the size and the depth of the box. */
  readonly summary: Phrase;
  /** The entry in the overview, in few characters. */
  readonly brief: Phrase;
  /** What to make and where it goes, one paragraph for each part. */
  readonly building: readonly Phrase[];
  readonly playing: readonly Phrase[];
  /** Why its response has no alignment, where the brief asks for a comparison. */
  readonly noAlignment?: Phrase;
  /** What the dips between the impedance peaks tell, where there are any: a noun and its frequencies, Hz. */
  readonly dip?: { readonly of: string; readonly at: readonly number[] };
}

/** The limit that stops a box although its response goes deeper, and how far the wanted level would exceed it. */
export interface Below {
  readonly binding: string;
  /** The lowest frequency that the response alone would reach, Hz. */
  readonly frequency: number;
  /** The wanted level asks for this many times the limit at that frequency. */
  readonly times: number;
  /** The same as a quantity, such as an air speed, where the kind limits it. */
  readonly load?: { readonly value: number; readonly meaning: Meaning; readonly subject: string };
}

/** How near a design is to something that the brief limits. */
export interface Margin {
  readonly path: string;
  readonly what: string;
  /** The value of the design and the limit of the brief, each with its unit. */
  readonly value: string;
  readonly limit: string;
  readonly sense: 'at most' | 'at least';
  /** The share of the limit that is used, minus 1. Below 0 there is room left; at 0 the limit is reached. Levels and powers count as amplitudes. */
  readonly relative: number;
}

/** All columns of a design, for one drive. */
export interface Curves {
  readonly driveVoltageRms: number;
  readonly frequencies: readonly number[];
  readonly levelHalfSpace: readonly number[];
  readonly groupDelay: readonly number[];
  readonly displacementPeak: readonly number[];
  readonly airSpeedPeak?: readonly number[];
  readonly impedance: readonly number[];
  readonly impedancePhase: readonly number[];
  /** Greatest level of a steady sine at each frequency, and the limit that binds there. */
  readonly greatestLevel: readonly number[];
  readonly binding: readonly string[];
}

/** How far down a constant drive is safe for the cone, and what keeps the cone safe below that. */
export interface Guard {
  readonly driveVoltageRms: number;
  /** Below this frequency the drive exceeds the travel, Hz. Left out where it never does, and where it always does. */
  readonly lowestSafeFrequency?: number;
  /** Set when the drive exceeds the travel even at the highest tone that is heard. */
  readonly neverSafe?: true;
  /** The lowest safe frequency without the high-pass that is there already, where that high-pass makes every tone safe, Hz. */
  readonly lowestWithoutFilter?: number;
  /**
   * The Butterworth high-pass of order 1 to 4 that keeps the cone within its travel and raises f3 the least, with its digital
   * coefficients if the brief states a sample rate; left out where none below the band does.
   */
  readonly highPass?: GentleHighPass & { readonly sampleRate?: number; readonly sections?: readonly Biquad[] };
}
