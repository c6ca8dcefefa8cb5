import type { Asked } from '../job/job.js';
import type { Phrase } from '../kind/phrase.js';
import type { Brief } from '../kind/standard.js';
import type { Design } from './design-record.js';
import type { DriverVerdict } from './per-driver.js';

/** The answer to a brief: designs, or the reasons why there is none. Plain records in SI units that survive JSON. */
export type Answer = Met | NotMet;

/** Every wish is met. */
export interface Met {
  readonly ok: true;
  readonly version: 1;
  readonly title: string;
  readonly asked: Asked;
  readonly designs: readonly Design[];
  /** If the brief offers several drivers: the best box for each, the best driver first. */
  readonly perDriver?: readonly DriverVerdict[];
  /** Which of the allowed boxes were left out because they cannot have the alignment of the brief, and why. */
  readonly leftOut?: readonly string[];
  /** How each driver was completed from its data: which values were derived, and how far given values disagree. */
  readonly drivers: readonly DriverAccount[];
}

/** Not every wish can be met together. */
export interface NotMet {
  readonly ok: false;
  readonly version: 1;
  readonly title: string;
  /** The smallest set of wishes that contradict each other. Without any one of them, the others can be met. */
  readonly conflict: readonly { readonly path: string; readonly wish: string }[];
  readonly because: readonly string[];
  readonly nearest?: {
    readonly changes: readonly { readonly path: string; readonly from: string; readonly to: string }[];
    readonly brief: Brief;
    /** The answer to the changed brief. */
    readonly answer: Met;
  };
  readonly drivers: readonly DriverAccount[];
}

export interface DriverAccount {
  readonly name: string;
  readonly parameters: Readonly<Record<string, number>>;
  readonly derived: readonly { readonly field: string; readonly value: number; readonly by: string }[];
  readonly deviations: readonly {
    readonly field: string;
    readonly given: number;
    readonly implied: number;
    readonly relative: number;
  }[];
  readonly blocked: readonly string[];
  /**
   * What was assumed because the sheet gives a sensitivity instead of Vas, how the sensitivity agrees with the other data, and an Sd that
   * is wider than the cutout.
   */
  readonly assumed: readonly Phrase[];
}
