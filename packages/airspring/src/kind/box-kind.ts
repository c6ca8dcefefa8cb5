import type { Alignment, AlignmentResult } from '@airspring/core/alignment';
import { type DrivenSpec, type Family, type System, systemOf } from '@airspring/core/enclosure';
import type { Impossible, Warning } from '@airspring/core/fault';
import type { Limit } from '@airspring/core/limit';
import type { Probe, Setter } from '@airspring/core/network';
import type { Length, Kind as Quantity } from '@airspring/core/quantity';
import type { Face, Fit } from '@airspring/core/space';
import type { VentSection } from '@airspring/core/vent';
import type { BriefPart, Fields } from '../brief/fields.js';
import type { DriverChoice, Job, Weights } from '../job/job.js';
import type { ChamberOfBox, DesignVent, DesignWeights, Hole, Panel, PlacedBoard, RawMargin } from './build-record.js';
import type { Meaning, Phrase } from './phrase.js';

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

/** An opening through which the air of a box moves, or several alike. */
export interface BoxOpening {
  /** What tells it from others in the probes and limits of its box: 'front'; left out where there is one. */
  readonly of?: string;
  /** As a sentence calls it: 'the vent of the front chamber'. */
  readonly called: string;
  readonly section: VentSection;
  /** Of a vent with two open ends: what it loses by its speed is then told as well. */
  readonly length?: Length;
}

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

/** The acoustic part of a variant, made from a family and its spec at each point. */
export const acousticsOf = <Spec, Input>(
  family: Family<Spec, Input>,
  { air }: Pick<Job, 'air'>,
  spec: (point: Point) => Spec,
): Pick<Variant, 'system' | 'values'> => ({
  system: (point) => systemOf(family, spec(point), air),
  values: (point, set) => family.values(spec(point), air, set),
});

/** A box of an alignment, with its net volume and its acoustic values; or why there is none. */
export type AlignedPoint =
  | (Extract<AlignmentResult<DrivenSpec>, { ok: true }> & { readonly point: Point })
  | Impossible;

/** A kind of box with one choice of drivers, and one choice of whatever the search does not vary, such as how many vents there are. */
export interface Variant {
  readonly kind: BoxKind;
  readonly choice: DriverChoice;
  /** The axes on which the sound depends, in addition to the net volume. The sound is computed once for each of their points. */
  readonly acoustic: readonly Axis[];
  /**
   * What a builder makes in place of the acoustic values, where these follow from it: the length of a vent gives its tuning. There
   * is one for each acoustic axis. Walks move these, and `settle` is given them. Default: the acoustic values themselves.
   */
  readonly made?: readonly Made[];
  /**
   * Variants of a kind and a choice of drivers with the same text differ in their room alone, in every space that a brief may give.
   * What they sound like is worked out once. Default: each differs from every other.
   */
  readonly sound?: string;
  /** What tells it from those that sound alike. */
  readonly built?: string;
  /** The axes on which only room and limits depend. */
  readonly geometric: readonly Axis[];
  /** The last number of each point, where it is an inner edge; `settle` makes it that of the box. */
  readonly span?: Span;
  /** Air that drivers and bracing take up at every point, m³. */
  readonly contents: number;
  /** Inner edges below which the box cannot hold its drivers, m. */
  readonly least: readonly [width: number, height: number, depth: number];
  /** The box at a point. The search reads radiatedFlow, coneVelocity and current; the record whatever `respond` reads. */
  readonly system: (point: Point) => System;
  /** Sets the numbers of the network at a point, by name. The topology is the same at all points. */
  readonly values: (point: Point, set: Setter) => void;
  /**
   * From which level reach, fall and rise are told: the asymptote (default), or the maximum up to the end of the band, for a box
   * whose level approaches nothing.
   */
  readonly reference?: 'asymptote' | 'maximum';
  /**
   * The box in which the drivers have the response of an alignment, with the losses of the kind. `at` is any point: it gives what no
   * alignment chooses. Where a shape leaves a number open, that of the point is kept if `keep` says so. Left out where the kind has no
   * such boxes.
   */
  readonly align?: (alignment: Alignment, at: Point, keep?: boolean) => AlignedPoint;
  /** The net volume of every box, where an alignment decides it, m³. */
  readonly netVolume?: number;
  /** Default none. */
  readonly loads?: readonly Load[];
  /** The openings at a point through which the air moves, as vents: what is known of their noise and of their losses is then told. */
  readonly openings?: (point: Point) => readonly BoxOpening[];
  readonly limits: (point: Point) => readonly Limit[];
  readonly wishes: readonly KindWish[];
  /** Fills in the parts at a point. `false` where they cannot be made. It is called very often, and checks nothing. */
  readonly parts: (point: Point, out: Parts) => boolean;
  /**
   * The greatest extent for which inner edges leave room; below zero where not even the drivers fit. It is never less in a larger box.
   * Where a caller asks only whether an extent is left, `enough`, any answer will do that says so.
   */
  readonly room: (width: number, height: number, depth: number, point: Point, enough?: number) => number;
  /** Variants with the same text have the same room at the same point. */
  readonly roomKey?: string;
  /** Whether the room depends on every axis, so that it is not kept from one point for the next. */
  readonly roomByPoint?: true;
  /**
   * An upper bound of `room` that is quick to compute; default none. With `volume` it is one for all boxes of this inner volume whose
   * edges are at most those given.
   */
  readonly roomAtMost?: (width: number, height: number, depth: number, point: Point, volume?: number) => number;
  /**
   * The nearest point that can be made, such as one with a vent of whole millimetres. `airBefore` is the air of the box before the
   * kind's parts take theirs, m³. `undefined` where nothing can be made.
   */
  readonly settle: (
    airBefore: number,
    point: Point,
    inner: readonly [width: number, height: number, depth: number],
  ) => Point | undefined;
  /** What the brief asks of its room, as a sentence, where that may be more than any box has. It is told if no box has room. */
  readonly asksForRoom?: Phrase;
  readonly place: (edges: readonly [number, number, number], point: Point) => Fit | Impossible;
  /** Whether `place` finds a place between inner edges, said without the record of it; default by `place` itself. */
  readonly fits?: (width: number, height: number, depth: number, point: Point) => boolean;
  readonly record: (finished: Finished) => KindRecord;
}

/**
 * A kind of box that a brief can ask for. It is one value; other packages make their kinds as this one does. `design(brief, { kinds })`
 * searches the kinds that are passed in.
 */
export interface BoxKind<F extends Fields = Fields> extends BriefPart<F> {
  /** Its name in a sentence: 'a vented box'. */
  readonly called: string;
  /** Every variant that a brief allows with one choice of drivers. The kind finds its own fields in `job.sections`. */
  readonly variants: (job: Job, choice: DriverChoice) => readonly Variant[];
}
