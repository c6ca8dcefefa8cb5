import {
  closedResonance,
  type FourthOrderBandPassSpec,
  fourthOrderBandPass,
  fourthOrderBandPassFamily,
} from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { passband } from '@airspring/core/response';
import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { airSpeedIn } from './air-speed.js';
import { alignsIn } from './aligns.js';
import { across, fields, partitionsOf } from './band-pass-fields.js';
import { bandPassWords } from './band-pass-words.js';
import { acousticsOf, type BoxKind, type Finished, type KindRecord, type Point, type Variant } from './box-kind.js';
import { contentsOf } from './drivers.js';
import { type EdgeName, partitionAcross } from './partition.js';
import { type RoundVentSettings, roundVentSettings } from './round-vent-fields.js';
import { roundVents } from './round-vents.js';
import { tuningOf, ventLengths, wholeMillimetres, wholeVent } from './vent-length.js';
import { USUAL_QL } from './vented-fields.js';
import { bodyOf, takenBy, tunedTo } from './vents.js';

type Edges = readonly [number, number, number];

const MM = 1e-3;
/** Least and greatest share of the air that is behind the cone. */
const SHARES = [0.15, 0.85] as const;

/** A point is net volume of both chambers, tuning of the front one, share of the rear one, and diameter of the vents. */
function variantOf(job: Job, choice: DriverChoice, all: RoundVentSettings, count: number, edge: EdgeName): Variant {
  const { box = {} } = job.sections as ReadFields<typeof fields>;
  const { QL = USUAL_QL, QA, QP, tuning: pinned } = box;
  const losses = { frontQL: QL, ...(QA !== undefined && { frontQA: QA }), ...(QP !== undefined && { frontQP: QP }) };
  const { drivers } = choice;
  const t = job.space.panelThickness;
  const partition = partitionAcross(job, choice, edge);
  const { axis } = partition;
  const settings = { ...all, faces: all.faces.filter((face) => face !== partition.inside) };
  const vents = roundVents(bandPass, job, choice, settings, count, partition.layout);
  const contents = contentsOf(job, choice);
  const lengthFor = ventLengths(vents, job.air);

  /** What the vents see of a point: the air of the front chamber, its tuning, and their diameter. */
  const atVents = (point: Point): Point => [point[0]! * (1 - point[2]!), point[1]!, point[3]!];
  const areaOf = (point: Point): number => vents.area(atVents(point));
  const opening = airSpeedIn({
    element: 'vent front',
    called: 'vent',
    path: 'vent.airSpeed',
    airSpeedPeak: vents.airSpeedPeak,
    area: areaOf,
  });
  const lengthOf = (vent: Point): number => lengthFor(vent)(vent[0]!, vent[1]!);
  /** Length of the front chamber, which holds its air and the vents. */
  const frontLength = (inner: Edges, vent: Point): number =>
    (vent[0]! + takenBy(vents, vent, wholeMillimetres(lengthOf(vent)), t)) / partition.area(inner);
  /** The same for any tuning: the vents take at most what straight ones take that reach through the chamber. */
  function frontAtMost(inner: Edges, point: Point): number {
    const area = partition.area(inner);
    const share = point[2]!;
    const whole = inner[axis] - t - contents.taken / area;
    const length = ((1 - share) * whole) / (1 - (share * vents.areaTaken(atVents(point))) / area);
    return inner[axis] - t - length < partition.leastBehind - MM ? -1 : length + MM;
  }

  /** Vents in whole millimetres, then the partition at a whole millimetre, then the tuning and the share that result. */
  function settle(airBefore: number, asked: Point, inner: Edges): Point | undefined {
    const [, tuned = 0, share = 0, diameter = 0] = asked;
    const area = partition.area(inner);
    const air = airBefore - area * t;
    const vent: Point = [air, tuned, diameter];
    const length = lengthFor(vent);
    const front = (ventLength: number) => (1 - share) * (air - takenBy(vents, vent, ventLength, t));
    const whole = wholeVent(length, front, tuned, t, 0.02 * air);
    if (whole === undefined) return undefined;
    const taken = takenBy(vents, vent, whole.length, t);
    const at = Math.round((whole.netVolume + taken) / area / MM) * MM;
    const [frontAir, rearAir] = [area * at - taken, air - area * at];
    if (!(frontAir > 0 && rearAir > 0) || inner[axis] - t - at < partition.leastBehind) return undefined;
    const total = frontAir + rearAir;
    const fb = tuningOf(length, frontAir, whole.length, whole.fb);
    const point = [total, fb, rearAir / total, diameter];
    return vents.room(...partition.first(inner, at), atVents(point)) >= whole.length - 1e-9 ? point : undefined;
  }

  const spec = (point: Point): FourthOrderBandPassSpec => ({
    drivers,
    rearVolume: si('volume', point[0]! * point[2]!),
    rearFillGain: 1,
    frontVolume: si('volume', point[0]! * (1 - point[2]!)),
    frontTuning: si('frequency', point[1]!),
    frontVentArea: si('area', areaOf(point)),
    ...losses,
    sourceResistance: si('resistance', job.amplifier.sourceResistance),
  });

  function place(outer: Edges, point: Point) {
    const vent = atVents(point);
    const inner = outer.map((size) => size - 2 * t) as unknown as Edges;
    const at = Math.round(frontLength(inner, vent) / MM) * MM;
    const placed = partition.place(outer, at, bodyOf(vents, vent, wholeMillimetres(lengthOf(vent))));
    return vents.refuse?.(placed) ?? placed;
  }

  function record(finished: Finished): KindRecord {
    const { point, edges, fit } = finished;
    const vent = atVents(point);
    const length = wholeMillimetres(lengthOf(vent));
    const { fb, warnings } = tunedTo(vents, vent, length, job);
    const [frontVolume, rearVolume] = [si('volume', vent[0]!), si('volume', point[0]! - vent[0]!)];
    const told = vents.tell({ ...finished, point: vent }, length, fb);
    const { fc, Qtc } = closedResonance({ drivers, netVolume: rearVolume }, job.air);
    const passed = passband(fourthOrderBandPass(spec(point), job.air), { to: si('frequency', 2000) });
    const inner = edges.map((size) => size - 2 * t) as unknown as Edges;
    const at = Math.round(frontLength(inner, vent) / MM) * MM;
    const front = partition.first(inner, at);
    const words = bandPassWords({
      axis,
      at,
      volumes: [frontVolume, rearVolume],
      band: passed.ok ? [passed.lower ?? 0, passed.upper ?? 0] : [0, 0],
      resonance: job.air.speedOfSound / 2 / Math.max(length, ...front),
      told,
      contents,
      written: box.QL,
      QL,
      many: drivers.fronts > 1,
    });
    return {
      ...told,
      ...words,
      driverHoles: partition.holes(edges, at, fit),
      boards: [partition.board(edges)],
      dip: 'close to the tuning of the vented chamber',
      numbers: [
        { what: 'tuning of the vented chamber', value: [[fb, 'frequency']] },
        { what: 'resonance of the driver in the closed chamber (fc)', value: [[fc, 'frequency']] },
        { what: 'quality factor of the driver there (Qtc)', value: [[Qtc, 'ratio']] },
        ...words.numbers,
      ],
      warnings,
      givesOut: { vent: 'the air speed in the vent' },
    };
  }

  return {
    kind: bandPass,
    choice,
    reference: 'maximum',
    acoustic: [
      {
        name: 'tuning',
        from: pinned ?? job.wanted.lowest * 0.8,
        to: pinned ?? job.wanted.highest * 1.2,
        ratio: 1.04,
        unit: 0.05,
      },
      { name: 'rear share', from: SHARES[0], to: SHARES[1], ratio: 1.1, unit: 1e-3, inRoom: true },
    ],
    geometric: vents.geometric,
    contents: contents.taken,
    least: partition.least,
    ...acousticsOf(fourthOrderBandPassFamily, job, spec),
    ...alignsIn(fourthOrderBandPassFamily, job, spec, ({ rearVolume, frontVolume, frontTuning }) => {
      const netVolume = rearVolume + frontVolume;
      return [netVolume, frontTuning, rearVolume / netVolume];
    }),
    ...opening,
    wishes: [
      ...opening.wishes,
      ...vents.wishes.map((wish) => ({
        ...wish,
        needed: (point: Point, load: number) => wish.needed(atVents(point), load),
      })),
    ],
    parts: (point, parts) => {
      const vent = atVents(point);
      const length = lengthOf(vent);
      if (!(length > t)) return false;
      parts.extent = length;
      // The partition of a cube; `settle` knows the true one.
      parts.taken = takenBy(vents, vent, length, t) + t * (point[0]! + contents.taken) ** (2 / 3);
      parts.effort = vents.effort * length;
      return true;
    },
    room: (width, height, depth, point) => {
      const inner: Edges = [width, height, depth];
      const length = frontAtMost(inner, point);
      return length > 0 ? vents.room(...partition.first(inner, length), atVents(point)) : -1;
    },
    roomKey: JSON.stringify([partition.layout, axis, vents.roomKey]),
    roomAtMost: (width, height, depth, point) => {
      const inner: Edges = [width, height, depth];
      const length = frontAtMost(inner, point);
      return length > 0 ? vents.roomAtMost(...partition.first(inner, length), atVents(point)) : -1;
    },
    settle,
    place,
    record,
  };
}

/** A band-pass box of fourth order: drivers in a partition, a closed chamber behind them, a vented one in front. */
export const bandPass: BoxKind<typeof fields> = {
  name: 'band-pass',
  byName: true,
  called: 'a band-pass box',
  fields,
  across,
  variants: (job, choice) => {
    const settings = roundVentSettings(job);
    return partitionsOf(job, settings).flatMap((edge) =>
      settings.counts.map((count) => variantOf(job, choice, settings, count, edge)),
    );
  },
};
