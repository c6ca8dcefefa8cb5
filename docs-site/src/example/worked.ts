import type { Chart } from '../figures/chart.js';
import type { Sweep } from '../figures/sweep.js';
import type { AnyValues, Inputs, Values } from './input.js';

/** A picture of a page, at any values of its inputs. */
export interface WorkedFigure<V = AnyValues> {
  readonly title: string;
  /** Axes, lines and the sentence that says what they show. */
  readonly chart: (values: V) => Chart;
  /** Said under the picture, and not in its label. */
  readonly note?: string;
  /** The numbers of the picture, for a table. */
  readonly data: (values: V) => { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

/** Curves over one axis of frequency, at any values; `how` tells bold and thin curves apart. */
export interface WorkedSweep<V = AnyValues> {
  readonly how: string;
  readonly sweep: (values: V) => Sweep;
}

/** What is made in a worker, since it takes longer than a frame. */
export interface SlowPart {
  readonly answers: Readonly<Record<string, string>>;
  readonly pictures: Readonly<Record<string, string>>;
}

/** A file that the reader may keep, made when it is asked for. */
export interface WorkedFile<V = AnyValues> {
  readonly type: string;
  readonly make: (values: V) => Promise<string | Uint8Array> | string | Uint8Array;
}

/** The one model of a page: what may be changed, what the text answers, what the pictures show. */
export interface Worked<V = AnyValues> {
  readonly inputs: Inputs;
  /** What answers and figures need, in parts that need nothing of each other: they are done over as many frames as it takes. */
  readonly parts?: (values: V) => readonly (() => unknown)[];
  /** Every number and every adjective of the text that hangs on an input. */
  readonly answers: (values: V) => Readonly<Record<string, string>>;
  readonly figures: Readonly<Record<string, WorkedFigure<V>>>;
  readonly sweeps?: Readonly<Record<string, WorkedSweep<V>>>;
  /** Drawings that are no charts, as SVG. */
  readonly pictures?: Readonly<Record<string, (values: V) => string>>;
  /** More answers and drawings, which follow a change as soon as a worker has them. */
  readonly slow?: (values: V) => SlowPart;
  /** By their names. */
  readonly files?: Readonly<Record<string, WorkedFile<V>>>;
}

/** Ties the types of a page together: the functions take what the inputs give. */
export const worked = <const I extends Inputs>(
  page: { readonly inputs: I } & Omit<Worked<Values<I>>, 'inputs'>,
): Worked => page as unknown as Worked;
