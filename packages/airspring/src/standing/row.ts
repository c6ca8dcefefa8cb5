import type { Phrase } from '../kind/phrase.js';
import type { Account } from './account.js';
import type { Kept } from './fields.js';

/** What a change leaves as it is: the tuning, the length of the vent, or the air in the box. */
export type Holds = 'tuning' | 'length' | 'volume';

/** The numbers of the box that a change leaves, as core's families take them. */
export interface ChangedBox {
  readonly wiring: { readonly series: number; readonly parallel: number; readonly isobaric: boolean };
  readonly netVolume: number;
  readonly fb?: number;
  /** Total flow over the mean speed in the fastest vent, m². */
  readonly ventArea?: number;
  readonly tubes: readonly { readonly diameter: number; readonly length: number; readonly count: number }[];
  readonly slot?: { readonly width: number; readonly height: number; readonly length: number };
  readonly radiator?: { readonly name: string; readonly count: number; readonly addedMass: number };
  /** The level that is played, where it is less than the wanted one, dB. */
  readonly level?: number;
  readonly highPass?: { readonly order: 2; readonly corner: number };
}

/** Whether a change fits: it does, it does not, or the builder has to measure the free way behind the hole. */
export type Fitting = 'fits' | 'does not fit' | 'measure';

/** One change to a box that stands, each by itself. */
export type Row = RowDone | RowNot;

interface RowHead {
  /** The change as a noun: 'a wider vent'. */
  readonly change: string;
  readonly what: Phrase;
  readonly holds: readonly Holds[];
}

/** A change that can be made, with what it does. */
export interface RowDone extends RowHead {
  readonly ok: true;
  readonly box: ChangedBox;
  readonly account: Account;
  readonly fitting: Exclude<Fitting, 'does not fit'>;
  /** What to measure first. */
  readonly measure?: Phrase;
  /** How much work it is, as metres of vent to print. */
  readonly effort: number;
  /** What to buy, cut, print or drill, a sentence each. */
  readonly steps: readonly Phrase[];
}

/** A change that cannot be made, or may not. */
export interface RowNot extends RowHead {
  readonly ok: false;
  readonly because: Phrase;
  /** Set where the brief keeps what it would change. */
  readonly kept?: Kept;
  /** Set where it would fit but for its length: the tube, the way that it needs, and the way that there is, m. */
  readonly way?: { readonly diameter: number; readonly needed: number; readonly free: number };
}
