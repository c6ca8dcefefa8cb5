import type { Probe } from '@airspring/core/network';
import type { Kind as Quantity } from '@airspring/core/quantity';
import type { Weights } from '../job/job.js';
import type { Meaning } from './phrase.js';
import type { Point } from './point.js';

/** What a kind limits in addition to driver and amplifier: the air speed in a vent, or the travel of a radiator. */
export interface Load {
  /** What is read from the network, the same at all points. Of several readings the greatest counts. */
  readonly probes: readonly [Probe, ...Probe[]];
  /** Whether the reading is a velocity whose displacement counts. */
  readonly integrated?: boolean;
  /** Greatest allowed peak of that reading at a point; infinite where nothing limits it. */
  readonly capacity: (point: Point) => number;
  /** How it is reported: what it is, and how much of it a reading of 1 means at a point. */
  readonly what: string;
  readonly meaning: Meaning;
  readonly perReading: (point: Point) => number;
  /**
   * Path in the brief of the limit, where the limit is a fact of a bought part and the same at all points, like the Xmax of a
   * driver. It then counts in the level as the travel of the cone does. Left out where a wish of the kind limits it.
   */
  readonly ofPart?: string;
  /** The subject of a sentence about tones that are too low, such as 'the air in the vent': '… would reach 29 m/s'. */
  readonly below: string;
}

/** Something that a brief limits and a box may miss. */
export interface Wish {
  readonly path: string;
  readonly what: string;
  readonly quantity: Quantity;
  readonly unit: string;
  readonly allowed: number;
  readonly sense: 'at most' | 'at least';
  /** Which of the four weights decides how readily it yields. Without it, the weight is 1. */
  readonly weight?: keyof Weights;
  /** At a lower level the box needs less of it. */
  readonly easedByLevel?: true;
  /** A question of yes or no: it does not yield by degrees, but other wishes may yield so that it is met. */
  readonly firm?: true;
}

/** A wish of a kind, with what a box needs at a point. `loads` are the readings of the variant's loads, in their order. */
export interface KindWish extends Wish {
  readonly needed: (point: Point, loads: Float64Array) => number;
}
