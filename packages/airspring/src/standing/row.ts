import type { Phrase } from '../kind/phrase.js';
import type { Played } from '../record/played.js';
import type { Account } from './account.js';
import type { Bands } from './bands.js';
import type { Kept } from './fields.js';
import type { Bend, Legs } from './standing.js';

/** What a change keeps: the tuning, the length of the vent, or the air in the box. */
export type Holds = 'tuning' | 'length' | 'volume';

/** The numbers of the changed box, as the families of core take them. */
export interface ChangedBox {
  readonly wiring: { readonly series: number; readonly parallel: number; readonly isobaric: boolean };
  readonly netVolume: number;
  readonly fb?: number;
  /** Total flow over the mean speed in the fastest vent, m². */
  readonly ventArea?: number;
  readonly tubes: readonly {
    /** Place of its vent in the brief. */
    readonly vent: number;
    readonly diameter: number;
    readonly length: number;
    readonly count: number;
    /** Set where places are known and it has to bend. */
    readonly bend?: Legs;
  }[];
  readonly slot?: { readonly width: number; readonly height: number; readonly length: number };
  readonly radiator?: { readonly name: string; readonly count: number; readonly addedMass: number };
  /** The level that is played, if it is lower than the wanted one, dB. */
  readonly level?: number;
  readonly highPass?: { readonly order: 2; readonly corner: number };
}

/** A box whose tubes bend. */
export const withBends = (box: ChangedBox, bends: readonly Bend[]): ChangedBox => ({
  ...box,
  tubes: box.tubes.map((tube) => {
    const found = bends.find(({ vent }) => vent === tube.vent);
    if (found === undefined) return tube;
    const { vent: _, ...bend } = found;
    return { ...tube, bend };
  }),
});

/** Whether a change fits: it does, it does not, or the builder has to measure the clear distance behind the hole. */
export type Fitting = 'fits' | 'does not fit' | 'measure';

/** One change to an existing box, by itself. */
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
  /** Into which pieces its tubes are printed, and how these are joined; of the change to make first alone. */
  readonly making?: Phrase;
  /** What a measurement of the finished box should show; of the change to make first alone. */
  readonly impedance?: Played['impedance'];
  readonly account: Account;
  /** Of the change that helps most, for drivers known from the impedance of their box. */
  readonly bands?: Bands;
  readonly fitting: Exclude<Fitting, 'does not fit'>;
  /** What to measure first. */
  readonly measure?: Phrase;
  /** How much work it is, as metres of vent to print. */
  readonly effort: number;
  /** What to buy, cut, print or drill, a sentence each. */
  readonly steps: readonly Phrase[];
}

/** A change that cannot be made, or that the brief does not allow. */
export interface RowNot extends RowHead {
  readonly ok: false;
  readonly because: Phrase;
  /** Set if the brief keeps what it would change. */
  readonly kept?: Kept;
  /**
   * Set if only its length keeps it from fitting: the place of its vent in the brief, the diameter of the tube, the length that it
   * needs, and the length that there is, m.
   */
  readonly way?: {
    readonly vent: number;
    readonly diameter: number;
    readonly needed: number;
    readonly free: number;
  };
}

/** The changes that can be made, each with its number in the report. */
export const numbered = (rows: readonly Row[]): (readonly [number: number, row: RowDone])[] =>
  rows.filter((row) => row.ok).map((row, i) => [i + 1, row] as const);
