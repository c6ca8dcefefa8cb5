import type { ReadFields } from '../brief/fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import type { fields } from './band-pass-fields.js';
import type { BoxKind, Variant } from './box-kind.js';
import { contentsOf } from './drivers.js';
import { type Chamber, finishedChambers, heldBy, type Rear } from './finished-chambers.js';
import { type EdgeName, partitionAcross } from './partition.js';
import type { Axis, Parts, Point } from './point.js';
import type { RoundVentSettings } from './round-vent-fields.js';
import { roundVents } from './round-vents.js';
import { tuningOf, ventLengths, wholeMillimetres } from './vent-length.js';
import { takenBy } from './vents.js';

type Edges = readonly [width: number, height: number, depth: number];

const MM = 1e-3;
/** Rounds of the fixed point between the lengths of the vents and the air that they leave. */
const SETTLING = 12;
/** Least and greatest share of the air that is behind the cone. */
const SHARES = [0.15, 0.85] as const;
/**
 * Least and greatest tuning of the rear chamber over that of the front one. Two chambers with vents outside may be exchanged, and
 * vents that lead through the partition tune the box lower than those of the front chamber.
 */
const RATIOS = [0.3, 0.95] as const;
/** Least share of the air that a chamber keeps. */
const LEAST = 0.02;

/**
 * A box that a partition divides: a chamber in front of the cones, tuned by vents, and one behind them, closed or tuned by vents of the
 * same diameter. A point is the net volume of both chambers, the tuning of the front one, that of the rear one over it where it has
 * vents, the share of the air in the rear one, and the diameter.
 */
export function twoChambers(
  kind: BoxKind,
  job: Job,
  choice: DriverChoice,
  settings: RoundVentSettings,
  count: number,
  edge: EdgeName,
  rear: Rear,
) {
  const t = job.space.panelThickness;
  const partition = partitionAcross(job, choice, edge, rear === 'through');
  const { axis, inside } = partition;
  const contents = contentsOf(job, choice);
  const { frontBracing = 0 } = (job.sections as ReadFields<typeof fields>).partition ?? {};
  /** Air that the drivers and the bracing of both chambers take. */
  const filled = contents.taken + frontBracing;
  /** Where a point has the share of the rear chamber; the diameter follows. */
  const shareAt = rear === 'closed' ? 2 : 3;

  function chamberOf(side: 0 | 1, faces: RoundVentSettings['faces']): Chamber {
    const vents = roundVents(kind, job, choice, { ...settings, faces }, count, partition.layouts[side]);
    const lengthFor = ventLengths(vents, job.air);
    return {
      vents,
      seenAt: (point, out = [0, 0, 0]) => {
        const share = point[shareAt]!;
        out[0] = point[0]! * (side === 0 ? 1 - share : share);
        out[1] = side === 0 ? point[1]! : point[1]! * point[2]!;
        out[2] = point[shareAt + 1]!;
        return out;
      },
      lengthFor,
      lengthOf: (seen) => lengthFor(seen)(seen[0]!, seen[1]!),
      bracing: side === 0 ? frontBracing : job.space.bracing,
    };
  }
  const without = (face: string) => settings.faces.filter((one) => one !== face);
  const front = chamberOf(0, without(inside[0]));
  const behind = rear === 'closed' ? [] : [chamberOf(1, rear === 'out' ? without(inside[1]) : [inside[1]])];
  const chambers = [front, ...behind];

  /**
   * What follows from a point alone: what the vents of each chamber see, their lengths, and what the front chamber holds. It is written
   * again for another point only, since all shapes of a box are asked for one after the other.
   */
  const heard = { point: [Number.NaN], seen: chambers.map(() => [0, 0, 0]), lengths: chambers.map(() => 0), held: 0 };
  function sounding(point: Point) {
    let same = heard.point.length === point.length;
    for (let i = 0; same && i < point.length; i++) same = heard.point[i] === point[i];
    if (same) return heard;
    for (let i = 0; i < point.length; i++) heard.point[i] = point[i]!;
    for (let side = 0; side < chambers.length; side++) {
      const seen = chambers[side]!.seenAt(point, heard.seen[side]);
      heard.lengths[side] = chambers[side]!.lengthOf(seen);
    }
    heard.held = heldBy(front, heard.seen[0]!, heard.lengths[0]!, t);
    return heard;
  }

  /**
   * The longest front vents for which there is room; below zero where the drivers or the rear vents have none. A chamber is longest in the
   * box of the least `volume` between these edges.
   */
  function roomBy(room: 'room' | 'roomAtMost') {
    const [inFront, inRear] = chambers.map(({ vents }) => vents[room] as Variant['room']);
    return (
      width: number,
      height: number,
      depth: number,
      point: Point,
      enough: number | undefined,
      volume?: number,
    ) => {
      const { seen, lengths, held } = sounding(point);
      const whole = axis === 0 ? width : axis === 1 ? height : depth;
      const at = (held * whole) / (volume ?? width * height * depth);
      const rest = whole - t - at;
      // The lattice knows the area of the partition only about.
      if (rest < partition.leastBehind - MM) return -1;
      if (inRear !== undefined) {
        const needed = lengths[1]! - 1e-9;
        if (along(inRear, width, height, depth, rest, seen[1]!, needed) < needed) return -1;
      }
      return along(inFront!, width, height, depth, at, seen[0]!, enough);
    };
  }
  /** The room of a chamber, which is so long across the partition. */
  const along = (
    of: Variant['room'],
    width: number,
    height: number,
    depth: number,
    length: number,
    seen: Point,
    enough: number | undefined,
  ): number => of(axis === 0 ? length : width, axis === 1 ? length : height, axis === 2 ? length : depth, seen, enough);
  const room: Variant['room'] = roomBy('room');
  const roomAtMost = roomBy('roomAtMost');

  /** The vents of all chambers at a point. */
  function parts(point: Point, out: Parts): boolean {
    const { seen, lengths } = sounding(point);
    // The partition of a cube; `settle` knows the true one.
    out.taken = t * (point[0]! + filled) ** (2 / 3);
    out.effort = 0;
    out.extent = lengths[0]!;
    for (let side = 0; side < chambers.length; side++) {
      const length = lengths[side]!;
      if (!(length > t)) return false;
      const { vents } = chambers[side]!;
      out.taken += takenBy(vents, seen[side]!, length, t);
      out.effort += vents.effort * length;
    }
    return true;
  }

  /** Vents in whole millimetres, then the partition at a whole millimetre, then the tunings and the share that result. */
  function settle(airBefore: number, asked: Point, inner: Edges): Point | undefined {
    const area = partition.area(inner);
    const air = airBefore - area * t;
    const [share, diameter] = [asked[shareAt]!, asked[shareAt + 1]!];
    const tuned = [asked[1]!, asked[1]! * asked[2]!];
    const seen = chambers.map((_, side): Point => [air, tuned[side]!, diameter]);
    const lengthFor = chambers.map((chamber, side) => chamber.lengthFor(seen[side]!));
    const lengths = chambers.map(() => 0);
    const taken = (side: number) => takenBy(chambers[side]!.vents, seen[side]!, lengths[side]!, t);
    /** The air that the vents leave. */
    const left = () => {
      let net = air;
      for (let side = 0; side < chambers.length; side++) net -= taken(side);
      return net;
    };
    // Vents take volume, and a smaller volume needs longer vents.
    for (let i = 0; i < SETTLING; i++) {
      const net = left();
      const [inFront, inRear] = [(1 - share) * net, share * net];
      if (!(Math.min(inFront, inRear) > LEAST * air)) return undefined;
      let settled = true;
      for (let side = 0; side < chambers.length; side++) {
        const length = lengthFor[side]!(side === 0 ? inFront : inRear, tuned[side]!);
        if (!(length > t)) return undefined;
        if (!(Math.abs(length - lengths[side]!) < 1e-5)) settled = false;
        lengths[side] = length;
      }
      if (settled) break;
    }
    for (let side = 0; side < chambers.length; side++) lengths[side] = wholeMillimetres(lengths[side]!);
    const takenFront = taken(0) + frontBracing;
    const takenRear = behind.length > 0 ? taken(1) : 0;
    const at = Math.round(((1 - share) * left() + takenFront) / area / MM) * MM;
    const made = [area * at - takenFront, air + frontBracing - area * at - takenRear] as const;
    if (!(Math.min(...made) > 0) || inner[axis] - t - at < partition.leastBehind) return undefined;
    const tunings = lengthFor.map((length, side) => tuningOf(length, made[side]!, lengths[side]!, tuned[side]!));
    const total = made[0] + made[1];
    const [first = 0, second] = tunings;
    const point = [total, first, ...(second === undefined ? [] : [second / first]), made[1] / total, diameter];
    const needed = lengths[0]! - 1e-9;
    return room(...inner, point, needed) >= needed ? point : undefined;
  }

  const finished = finishedChambers(job, partition, chambers, rear);

  /** The axes of the search; the tuning of the front chamber lies around the band. */
  function acoustic(pinned: number | undefined): Axis[] {
    const { lowest, highest } = job.wanted;
    const many = behind.length > 0;
    return [
      {
        name: 'tuning',
        from: pinned ?? lowest * 0.8,
        to: pinned ?? highest * 1.2,
        // With a second tuning every combination of both is tried.
        ratio: many ? 1.08 : 1.04,
        unit: 0.05,
      },
      ...(many ? [{ name: 'rear ÷ front tuning', from: RATIOS[0], to: RATIOS[1], ratio: 1.15, unit: 1e-3 }] : []),
      { name: 'rear share', from: SHARES[0], to: SHARES[1], ratio: many ? 1.2 : 1.1, unit: 1e-3 },
    ];
  }

  return {
    axis,
    contents,
    chambers,
    acoustic,
    told: finished.told,
    variant: {
      choice,
      geometric: front.vents.geometric,
      contents: filled,
      least: partition.least,
      parts,
      room,
      roomAtMost: (width: number, height: number, depth: number, point: Point, volume?: number) =>
        roomAtMost(width, height, depth, point, undefined, volume),
      roomByPoint: true as const,
      settle,
      place: finished.place,
    },
  };
}
