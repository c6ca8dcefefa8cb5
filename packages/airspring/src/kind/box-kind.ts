import { type Family, type System, systemOf } from '@airspring/core/enclosure';
import type { Impossible, Warning } from '@airspring/core/fault';
import type { Limit } from '@airspring/core/limit';
import type { Probe, Setter } from '@airspring/core/network';
import type { Kind as Quantity } from '@airspring/core/quantity';
import type { Fit } from '@airspring/core/space';
import type { BriefPart, Fields } from '../brief/fields.js';
import type { DriverChoice, Job, Weights } from '../job/job.js';
import type { DesignVent, Hole, Panel, RawMargin } from './build-record.js';
import type { Meaning, Phrase } from './phrase.js';

/**
 * A point of the search, all in SI units: the net volume, then the values of the acoustic axes, then those of the
 * geometric axes, in the order of the variant's lists.
 */
export type Point = readonly number[];

/** One number that the search may choose. */
export interface Axis {
  readonly name: string;
  /** The stated bounds, each of them a value to be tried. */
  readonly from: number;
  readonly to: number;
  /** Ratio between neighbours on the lattice of the survey. */
  readonly ratio: number;
  /** A design's value is a whole multiple of it, or one of the bounds. */
  readonly unit: number;
  /** How many times `to` the search looks at when it asks what would do instead; default 1. */
  readonly beyond?: number;
}

/** What the parts of a kind are at one point. */
export interface Parts {
  /** Greatest length that must find room, m; compared with `Variant.room`. Below zero: there is no such part. */
  extent: number;
  /** Air that the parts take from the box, m³. */
  taken: number;
  /** Work beyond the box itself, as metres of vent to print. */
  effort: number;
}

/** What a kind limits beside the driver and the amplifier: the air speed in a vent, the travel of a radiator. */
export interface Load {
  /** What is read from the network, the same for all points. */
  readonly probe: Probe;
  /** Whether a velocity is to be read as a displacement. */
  readonly integrated?: boolean;
  /** Greatest peak of that reading at a point; infinite where nothing limits it. */
  readonly capacity: (point: Point) => number;
  /** How it is said: what it is, and what a reading of 1 is worth at a point. */
  readonly what: string;
  readonly meaning: Meaning;
  readonly perReading: (point: Point) => number;
  /**
   * Path in the brief of the fact that is the limit, where it is a fact of a part as Xmax of a driver is, the same at all points:
   * it counts into the level as the cone does. Left out where a wish of the kind limits it.
   */
  readonly ofPart?: string;
  /** What exceeds it below the depth that is claimed, as the subject of a sentence: 'the air in the vent'. */
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
  /** Which of the four weights it yields by; left out: it weighs 1. */
  readonly weight?: keyof Weights;
  /** A lower level asks less of it. */
  readonly easedByLevel?: true;
}

/** A wish of a kind: what a box needs at a point, of the reading of the load where that is what it limits. */
export interface KindWish extends Wish {
  readonly needed: (point: Point, load: number) => number;
}

/** A finished box of a variant, of which the kind tells what it alone knows. */
export interface Finished {
  readonly edges: readonly [number, number, number];
  readonly point: Point;
  readonly fit: Fit;
}

/** What a kind tells of a finished box. */
export interface KindRecord {
  readonly vent?: DesignVent;
  readonly holes: readonly Hole[];
  /** Boards to cut beside the six panels. */
  readonly boards?: readonly Panel[];
  /** Follows the size of the box in the first paragraph. */
  readonly summary: Phrase;
  /** The column of the overview, in few characters. */
  readonly brief: Phrase;
  /** What to make and where it goes, a paragraph each. */
  readonly building: readonly Phrase[];
  /** Notes on how loud it plays. */
  readonly playing: readonly Phrase[];
  /** What an impedance measurement shows between its peaks, when there is one to look for. */
  readonly dip?: string;
  /** Numbers that belong to this kind, such as its resonance. */
  readonly numbers: readonly { readonly what: string; readonly value: Phrase }[];
  readonly assumed: readonly Phrase[];
  readonly margins: readonly RawMargin[];
  readonly warnings: readonly Warning[];
  /** Names of its own limits, as nouns: 'the first to give out is …'. */
  readonly givesOut: Readonly<Record<string, string>>;
  /** Something is printed or glued: its caution is due. */
  readonly printed: boolean;
}

/** The two acoustic parts of a variant, of a family and the spec at each point. */
export const acousticsOf = <Spec, Input>(
  family: Family<Spec, Input>,
  { air }: Pick<Job, 'air'>,
  spec: (point: Point) => Spec,
): Pick<Variant, 'system' | 'values'> => ({
  system: (point) => systemOf(family, spec(point), air),
  values: (point, set) => family.values(spec(point), air, set),
});

/** A kind of box with one choice of drivers, and with whatever else is a choice and no number: how many vents, say. */
export interface Variant {
  readonly kind: BoxKind;
  readonly choice: DriverChoice;
  /** What the sound depends on beside the net volume: demands are computed once for each point of these axes. */
  readonly acoustic: readonly Axis[];
  /** What only fit and limits depend on. */
  readonly geometric: readonly Axis[];
  /** Air that is taken at every point, by drivers and bracing, m³. */
  readonly contents: number;
  /** Inner edges below which no such box holds its drivers, m. */
  readonly least: readonly [width: number, height: number, depth: number];
  /** The box at a point. The search reads radiatedFlow, coneVelocity and current; the record whatever `respond` reads. */
  readonly system: (point: Point) => System;
  /** Sets the numbers of the network at a point, by name. The topology is the same at all points. */
  readonly values: (point: Point, set: Setter) => void;
  readonly load?: Load;
  readonly limits: (point: Point) => readonly Limit[];
  readonly wishes: readonly KindWish[];
  /** Fills in what the parts are; a kernel. `false` where there can be none at this point. */
  readonly parts: (point: Point, out: Parts) => boolean;
  /** Greatest extent for which inner edges leave room; below zero where not even the drivers fit. Never less in a larger box. */
  readonly room: (width: number, height: number, depth: number, point: Point) => number;
  /** Variants with the same text leave the same room at the same point. */
  readonly roomKey?: string;
  /** An upper bound of `room` that costs little; default none. */
  readonly roomAtMost?: (width: number, height: number, depth: number, point: Point) => number;
  /**
   * The point nearest to this one that can be made, in a box with so much air before the kind's parts take theirs, and with
   * these inner edges.
   */
  readonly settle: (
    airBefore: number,
    point: Point,
    inner: readonly [width: number, height: number, depth: number],
  ) => Point | undefined;
  readonly place: (edges: readonly [number, number, number], point: Point) => Fit | Impossible;
  readonly record: (finished: Finished) => KindRecord;
}

/**
 * A kind of box that a brief can ask for: one value, which a stranger's package makes as ours do. `design(brief, { kinds })`
 * searches those that are passed in.
 */
export interface BoxKind<F extends Fields = Fields> extends BriefPart<F> {
  /** As a sentence calls it: 'a vented box'. */
  readonly called: string;
  /** Every variant that a brief allows with one choice of drivers; its own fields stand in `job.sections`. */
  readonly variants: (job: Job, choice: DriverChoice) => readonly Variant[];
}
