import { ventedFamily } from '@airspring/core/enclosure';
import type { Impossible } from '@airspring/core/fault';
import { airSpeedLimit } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { type Fit, type FitInput, fit, type Layout } from '@airspring/core/space';
import { airSpeedCustoms, compileLengthForTuning, tuning, type VentSection } from '@airspring/core/vent';
import * as v from 'valibot';
import { audible, lossQ } from '../brief/bounds.js';
import type { ReadFields } from '../brief/fields.js';
import { quantity } from '../brief/quantity-text.js';
import type { DriverChoice, Job } from '../job/job.js';
import {
  type Axis,
  acousticsOf,
  type BoxKind,
  type Finished,
  type KindRecord,
  type KindWish,
  type Point,
  type Span,
  type Variant,
} from './box-kind.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import { metres, outerSizes } from './placing.js';
import { leaksAssumed } from './wording.js';

const opt = v.exactOptional;

/** Pins the tuning of the kinds of box that have one. */
export const pinnedTuning = opt(
  v.pipe(
    quantity('frequency', audible),
    v.description('the tuning that the box must have, within the rounding of its parts; default free'),
  ),
);

/** What a brief may say about every box that is tuned by vents. */
export const ventedFields = {
  box: {
    tuning: pinnedTuning,
    QL: opt(v.pipe(lossQ, v.description('quality factor of the leaks at the tuning; default 7, common practice'))),
    QA: opt(v.pipe(lossQ, v.description('quality factor of the absorption at the tuning; default no absorption'))),
    QP: opt(v.pipe(lossQ, v.description("quality factor of the vent's own loss at the tuning; default no loss"))),
  },
  airSpeed: opt(
    v.pipe(
      quantity('airSpeedPeak', { least: 0.1, greatest: 340, unit: 'm/s' }),
      v.description(
        'greatest air speed in the vent: peak in time, mean over its cross-section; default 17 m/s, common practice',
      ),
    ),
  ),
};

/** The greatest air speed that a vent may have, peak. */
export const airSpeedOf = ({ airSpeed }: { readonly airSpeed?: number | undefined }): number =>
  airSpeed ?? airSpeedCustoms.usual.airSpeedPeak;

/** Vents of one form: everything that differs between the kinds of box that are tuned by vents. */
export interface Vents {
  readonly kind: BoxKind;
  readonly airSpeedPeak: number;
  readonly geometric: readonly Axis[];
  /** Area of the narrowest cross-section of all vents together, where the air is fastest, m². */
  readonly area: (point: Point) => number;
  /** Air that a metre of all vents takes from the box, per metre, m². */
  readonly areaTaken: (point: Point) => number;
  /** Air that their ends take in addition, m³. */
  readonly endsTaken: (point: Point, length: number) => number;
  /** The vents as core tunes them. Equal vents give the same object. */
  readonly section: (point: Point) => VentSection;
  readonly layout: Layout['vent'];
  /** The vents as core places them, without their length. */
  readonly body: (point: Point) => Omit<NonNullable<FitInput['vent']>, 'length'>;
  /** The longest vents for which inner edges leave room; see `Variant.room`. */
  readonly room: Variant['room'];
  readonly roomAtMost: NonNullable<Variant['roomAtMost']>;
  /** Vents with the same text have the same room. */
  readonly roomKey: string;
  /** Work for a metre of vent, as metres of vent to print. */
  readonly effort: number;
  /** Where a vent reaches from panel to panel. */
  readonly span?: Span;
  /** Judges a placement that core found: returns it, or says why it cannot be used. */
  readonly refuse?: (placed: Fit | Impossible) => Fit | Impossible;
  readonly wishes: readonly KindWish[];
  readonly tell: (finished: Finished, length: number, fb: number) => VentTold;
}

/** What one form of vent tells about a design. The rest is the same for all forms. */
export type VentTold = Omit<KindRecord, 'dip' | 'numbers' | 'assumed' | 'warnings' | 'givesOut'>;

const SETTLING = 12;
const MM = 1e-3;
const wholeMillimetres = (length: number): number => Math.round(length / MM) * MM;

/** A box that is tuned by vents of one form: its losses, its tuning, and what limits the air in its vents. */
export function tunedByVents(job: Job, choice: DriverChoice, vents: Vents): Variant {
  const { box = {} } = job.sections as ReadFields<Pick<typeof ventedFields, 'box'>>;
  const { QL = 7, QA, QP, tuning: pinned } = box;
  const losses = { QL, ...(QA !== undefined && { QA }), ...(QP !== undefined && { QP }) };
  const { drivers } = choice;
  const { airSpeedPeak, area, areaTaken, endsTaken, geometric, span } = vents;
  const t = job.space.panelThickness;
  const contents = contentsOf(job, choice);
  const lengths = new Map<VentSection, (netVolume: number, fb: number) => number>();
  const lengthOf = (point: Point) => {
    const section = vents.section(point);
    let length = lengths.get(section);
    if (length === undefined) {
      length = compileLengthForTuning(section, job.air);
      lengths.set(section, length);
    }
    return length;
  };
  const takenBy = (point: Point, length: number): number =>
    areaTaken(point) * Math.max(0, length - t) + endsTaken(point, length);

  /** Rounds the vent to whole millimetres, and finds the tuning that results. */
  function settle(airBefore: number, asked: Point, inner: readonly [number, number, number]): Point | undefined {
    const point = span === undefined ? asked : [...asked.slice(0, 2 + geometric.length), inner[span.edge]];
    const [, tuned = 0, ...sizes] = point;
    const length = lengthOf(point);
    let [netVolume, ventLength, fb] = [airBefore, 0, tuned];
    if (airBefore <= 0) return undefined;
    // The vent takes volume, and a smaller volume needs a longer vent: first the fixed point, then whole millimetres.
    for (let i = 0; i < SETTLING; i++) {
      const before = ventLength;
      ventLength = length(netVolume, fb);
      netVolume = airBefore - takenBy(point, ventLength);
      if (!(ventLength > t) || netVolume <= 0.2 * airBefore) return undefined;
      if (Math.abs(ventLength - before) < 1e-5) break;
    }
    ventLength = wholeMillimetres(ventLength);
    netVolume = airBefore - takenBy(point, ventLength);
    // Two secant steps find the tuning that the rounded length gives.
    for (let i = 0; i < 2; i++) {
      const off = length(netVolume, fb) - ventLength;
      const slope = (length(netVolume, fb * 1.001) - ventLength - off) / (0.001 * fb);
      fb -= off / slope;
    }
    return [netVolume, fb, ...sizes];
  }

  /** The length for a point; after `settle` it is a whole number of millimetres. */
  const ventLength = (point: Point): number => lengthOf(point)(point[0]!, point[1]!);

  function place(edges: readonly [number, number, number], point: Point) {
    const placed = fit({
      outer: outerSizes(edges),
      thickness: metres(t),
      driver: driverRoom(choice),
      cutoutMargin: metres(job.space.cutoutPlay),
      vent: { ...vents.body(point), length: metres(wholeMillimetres(ventLength(point))) } as NonNullable<
        FitInput['vent']
      >,
    });
    return vents.refuse?.(placed) ?? placed;
  }

  function record(finished: Finished): KindRecord {
    const { point } = finished;
    const length = wholeMillimetres(ventLength(point));
    const vent = { ...vents.section(point), length: metres(length) };
    const netVolume = si('volume', point[0]!);
    const tuned = tuning({ vent, netVolume, panelThickness: metres(t) }, job.air);
    const fb = tuned.ok ? tuned.fb : point[1]!;
    return {
      ...vents.tell(finished, length, fb),
      dip: 'close to the tuning',
      numbers: [{ what: 'tuning (fb)', value: [[fb, 'frequency']] }],
      assumed: [...contents.assumed, ...leaksAssumed(box.QL, QL)],
      warnings: tuned.ok ? tuned.warnings : [],
      givesOut: { vent: 'the air speed in the vent' },
    };
  }

  return {
    kind: vents.kind,
    choice,
    acoustic: [
      {
        name: 'tuning',
        from: pinned ?? job.wanted.lowest / 2.5,
        to: pinned ?? job.wanted.lowest * 2.5,
        ratio: 1.03,
        unit: 0.05,
      },
    ],
    geometric,
    ...(span && { span }),
    contents: contents.taken,
    least: leastFor(job, choice),
    ...acousticsOf(ventedFamily, job, (point) => ({
      drivers,
      netVolume: si('volume', point[0]!),
      fb: si('frequency', point[1]!),
      ...losses,
      ventArea: si('area', area(point)),
      sourceResistance: si('resistance', job.amplifier.sourceResistance),
    })),
    load: {
      probe: { of: 'flow', element: 'vent' },
      capacity: (point) => area(point) * airSpeedPeak,
      what: 'air speed in the vent, peak',
      meaning: 'airSpeed',
      perReading: (point) => 1 / area(point),
      below: 'the air in the vent',
    },
    limits: () => [airSpeedLimit(si('airSpeedRms', airSpeedPeak / Math.SQRT2))],
    wishes: [
      {
        path: 'vent.airSpeed',
        what: 'air speed in the vent, peak',
        quantity: 'airSpeedPeak',
        unit: 'm/s',
        allowed: airSpeedPeak,
        sense: 'at most',
        easedByLevel: true,
        needed: (point, load) => load / area(point),
      },
      ...vents.wishes,
    ],
    parts: (point, out) => {
      const length = ventLength(point);
      if (!(length > t)) return false;
      out.extent = length;
      out.taken = takenBy(point, length);
      out.effort = vents.effort * length;
      return true;
    },
    room: vents.room,
    roomKey: JSON.stringify([driverLayout(job, choice), vents.roomKey]),
    roomAtMost: vents.roomAtMost,
    settle,
    place,
    record,
  };
}
