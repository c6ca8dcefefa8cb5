import { type VentedBoxSpec, ventedFamily } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { fit } from '@airspring/core/space';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { airSpeedIn } from './air-speed.js';
import { alignsIn } from './aligns.js';
import { acousticsOf, type Variant } from './box-kind.js';
import { contentsOf, driverLayout, driverRoom, leastFor } from './drivers.js';
import type { Finished, KindRecord } from './kind-record.js';
import { interiorIn, metres, outerSizes } from './placing.js';
import type { Point } from './point.js';
import { tuningBy, ventLengths, wholeMillimetres, wholeVent } from './vent-length.js';
import { ventWaves } from './vent-waves.js';
import { USUAL_QL, type ventedFields } from './vented-fields.js';
import { bodyOf, takenBy, tunedTo, type Vents } from './vents.js';
import { leaksAssumed } from './wording.js';

const MM = 1e-3;
/** Longer than any box has room for, m. */
const LONGEST = 20;

/** A box that is tuned by vents of one form: its losses, its tuning, and what limits the air in its vents. */
export function tunedByVents(job: Job, choice: DriverChoice, vents: Vents): Variant {
  const { box = {} } = job.sections as ReadFields<Pick<typeof ventedFields, 'box'>>;
  const { QL = USUAL_QL, QA, QP, tuning: pinned } = box;
  const losses = { QL, ...(QA !== undefined && { QA }), ...(QP !== undefined && { QP }) };
  const { drivers } = choice;
  /** The brief states the tuning, or an alignment does. */
  const isHeld = pinned !== undefined || typeof job.alignment === 'object';
  const { airSpeedPeak, area, geometric, span, fits } = vents;
  const t = job.space.panelThickness;
  const contents = contentsOf(job, choice);
  const waves = vents.waves
    ? ventWaves(job, choice, vents, { QL, ...(QA !== undefined && { QA }) }, (point) => ventLength(point))
    : undefined;
  const lengthOf = waves?.lengthOf ?? ventLengths(vents, job.air);
  /** The length for a point; after `settle` it is a whole number of millimetres. */
  const ventLength = (point: Point): number => lengthOf(point)(point[0]!, point[1]!);
  const madeLength = (point: Point): number => wholeMillimetres(ventLength(point));
  const opening = airSpeedIn(job, {
    openings: [{ element: 'vent', called: 'the vent', section: vents.section, length: madeLength }],
    called: 'vent',
    path: 'vent.airSpeed',
    airSpeedPeak,
    area,
    quiet: vents.quiet,
  });

  /** Finds the tuning that a vent gives. Where the tuning is held, the vent is that of whole millimetres which comes nearest. */
  function settle(airBefore: number, asked: Point, inner: readonly [number, number, number]): Point | undefined {
    const point = span === undefined ? asked : [...asked.slice(0, 2 + geometric.length), inner[span.edge]];
    const lengthOrTuning = point[1]!;
    if (airBefore <= 0) return undefined;
    const leastAir = 0.2 * airBefore;
    if (isHeld) {
      const airWith = (length: number) => airBefore - takenBy(vents, point, length, t, inner);
      const vent = wholeVent(lengthOf(point), airWith, lengthOrTuning, t, leastAir);
      return vent && withTuning(point, vent.netVolume, vent.fb);
    }
    const netVolume = airBefore - takenBy(vents, point, lengthOrTuning, t, inner);
    if (netVolume <= leastAir) return undefined;
    const fb = tuningBy(lengthOf(point), netVolume, lengthOrTuning, job.wanted.lowest);
    return fb === undefined ? undefined : withTuning(point, netVolume, fb);
  }

  function place(edges: readonly [number, number, number], point: Point) {
    const placed = fit({
      outer: outerSizes(edges),
      ...interiorIn(job, edges),
      thickness: metres(t),
      driver: driverRoom(choice),
      cutoutMargin: metres(job.space.cutoutPlay),
      vent: bodyOf(vents, point, madeLength(point)),
    });
    return vents.refuse?.(placed) ?? placed;
  }

  function record(finished: Finished): KindRecord {
    const { point } = finished;
    const length = madeLength(point);
    const lumped = tunedTo(vents, point, length, job);
    const piped = waves?.told(point, length);
    const { fb } = piped ?? lumped;
    const told = vents.tell(finished, length, fb);
    return {
      ...told,
      dip: { of: 'the tuning', at: [fb] },
      playing: [...told.playing, ...(piped?.playing ?? [])],
      numbers: [{ what: 'tuning (fb)', value: [[fb, 'frequency']] }, ...(piped?.numbers ?? [])],
      ...(piped?.noAlignment && { noAlignment: piped.noAlignment }),
      assumed: [...contents.assumed, ...leaksAssumed(box.QL, QL), ...(piped?.assumed ?? [])],
      warnings: piped ? [] : lumped.warnings,
      givesOut: { vent: 'the air speed in the vent', 'quiet vent': 'an onset of noise in the vent' },
    };
  }

  const spec = (point: Point): VentedBoxSpec => ({
    drivers,
    netVolume: si('volume', point[0]!),
    fb: si('frequency', point[1]!),
    ...losses,
    ventArea: si('area', area(point)),
    sourceResistance: si('resistance', job.amplifier.sourceResistance),
  });

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
      ...(waves ? geometric : []),
    ],
    ...(!isHeld && {
      made: [
        { from: t + MM, to: LONGEST, unit: MM, of: ventLength },
        ...(waves ? geometric : []).map((axis, i) => ({ ...axis, of: (point: Point) => point[2 + i]! })),
      ],
    }),
    geometric: waves ? [] : geometric,
    ...(span && { span }),
    contents: contents.taken,
    least: leastFor(job, choice),
    ...(waves?.sound ?? {
      ...acousticsOf(ventedFamily, job, spec),
      ...alignsIn(ventedFamily, job, spec, ({ netVolume, fb }) => [netVolume, fb]),
    }),
    ...opening,
    wishes: [...opening.wishes, ...vents.wishes],
    parts: (point, out) => {
      const length = ventLength(point);
      if (!(length > t)) return false;
      out.extent = length;
      out.taken = takenBy(vents, point, length, t);
      out.effort = vents.effort * length;
      return true;
    },
    room: vents.room,
    roomKey: JSON.stringify([driverLayout(job, choice), vents.roomKey]),
    roomAtMost: vents.roomAtMost,
    settle,
    place,
    ...(fits && {
      fits: (width, height, depth, point) => fits(width, height, depth, point, madeLength(point)),
    }),
    record,
  };
}

/** A point with another net volume and another tuning. */
function withTuning(point: Point, netVolume: number, fb: number): Point {
  const other = point.slice();
  other[0] = netVolume;
  other[1] = fb;
  return other;
}
