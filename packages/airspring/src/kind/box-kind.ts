import type { Alignment, AlignmentResult } from '@airspring/core/alignment';
import { type DrivenSpec, type Family, type System, systemOf } from '@airspring/core/enclosure';
import type { Impossible } from '@airspring/core/fault';
import type { Limit } from '@airspring/core/limit';
import type { Setter } from '@airspring/core/network';
import type { Length } from '@airspring/core/quantity';
import type { Fit } from '@airspring/core/space';
import type { VentSection } from '@airspring/core/vent';
import type { BriefPart, Fields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import type { Finished, KindRecord } from './kind-record.js';
import type { Phrase } from './phrase.js';
import type { Axis, Made, Parts, Point, Span } from './point.js';
import type { KindWish, Load } from './wish.js';

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
