import type { Warning } from '@airspring/core/fault';
import type { Face, Fit } from '@airspring/core/space';
import type { ChamberOfBox, DesignVent, DesignWeights, Hole, Panel, PlacedBoard, RawMargin } from './build-record.js';
import type { Phrase } from './phrase.js';
import type { Point } from './point.js';

/** A finished box of a variant. */
export interface Finished {
  readonly edges: readonly [number, number, number];
  readonly point: Point;
  readonly fit: Fit;
}

/** A part of a box that may be filled. */
export type Filled = 'box' | 'line' | 'vent';

/** What only the kind can say about a finished box. */
export interface KindRecord {
  readonly vent?: DesignVent;
  /** Where two chambers have vents of their own: both, the front one first. */
  readonly vents?: readonly DesignVent[];
  readonly weights?: DesignWeights;
  readonly holes: readonly Hole[];
  /** The holes for the drivers, where they stand in a board inside the box. Default: those in the six panels. */
  readonly driverHoles?: readonly Hole[];
  /** Faces that have no panel; the box is open there. */
  readonly open?: readonly Face[];
  /** Boards to cut in addition to the six panels. */
  readonly boards?: readonly Panel[];
  /** Where the boards of a slot stand. */
  readonly placed?: readonly PlacedBoard[];
  /** What a partition makes of the air in the box. */
  readonly chambers?: readonly ChamberOfBox[];
  /** Stands in the first paragraph, after the size and the depth of the box. */
  readonly summary: Phrase;
  /** The entry in the overview, in few characters. */
  readonly brief: Phrase;
  /** What to make and where it goes, one paragraph for each part. */
  readonly building: readonly Phrase[];
  /** What is filled with wadding, fibre or felt, as `building` tells. */
  readonly filled?: readonly Filled[];
  /** Notes on how loud it plays. */
  readonly playing: readonly Phrase[];
  /** What the dips between the impedance peaks tell, where there are any: 'the tuning', and where it is. */
  readonly dip?: { readonly of: string; readonly at: readonly number[] };
  /** Numbers that belong to this kind, such as its resonance. */
  readonly numbers: readonly { readonly what: string; readonly value: Phrase }[];
  /** Why its response has no alignment, whatever the size of the box; told where the brief asks for a comparison. */
  readonly noAlignment?: Phrase;
  readonly assumed: readonly Phrase[];
  readonly margins: readonly RawMargin[];
  readonly warnings: readonly Warning[];
  /** Names of its own limits, as nouns: 'the first limit it reaches is …'. */
  readonly givesOut: Readonly<Record<string, string>>;
  /** Whether something is printed or glued, so that the caution about fumes is needed. */
  readonly printed: boolean;
}
