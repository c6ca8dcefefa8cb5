import type { Impossible } from '@airspring/core/fault';
import { impossible } from '@airspring/core/fault';
import { type Face, type Fit, type FitInput, fit, type Layout, roundBodies } from '@airspring/core/space';
import type { DriverChoice, Job } from '../job/job.js';
import { axesOf, type Hole, holeAt, type Panel } from './build-record.js';
import { driverDepth, driverLayout } from './drivers.js';
import { metres, outerSizes } from './placing.js';

type Edges = readonly [width: number, height: number, depth: number];

/** The edges of a box that a partition can divide, in the order of its sizes. */
export const edgeNames = ['width', 'height', 'depth'] as const;
export type EdgeName = (typeof edgeNames)[number];

/** The partition is the far panel of the first chamber, which lies at the left, the bottom or the front. */
const FAR: readonly Face[] = ['right', 'top', 'back'];
const NEAR: readonly Face[] = ['left', 'bottom', 'front'];

/** What the frame of a driver takes in front of its panel, m (common practice, from memory); the travel of the cone comes on top. */
const FRAME = 0.01;
/** Least room behind the magnet, m. */
const BEHIND = 0.005;

/** A vent as core places it. */
type Vent = NonNullable<FitInput['vent']>;

/** Where everything stands in both chambers. */
export interface PartitionFit extends Fit {
  /** The vent of the second chamber, if it has one. */
  readonly second?: Fit['placement']['vent'];
  /** How much longer that vent could be. */
  readonly secondSlack?: Fit['slack'];
}

/** A box with two chambers. The drivers stand in the partition with their frames in the first one. */
export interface Partition {
  readonly axis: 0 | 1 | 2;
  /** The face of each chamber that is no panel of the box. */
  readonly inside: readonly [first: Face, second: Face];
  /** The bodies in each chamber, as core's `fit` takes them. */
  readonly layouts: readonly [first: Omit<Layout, 'vent'>, second: Omit<Layout, 'vent'>];
  /** Inner edges below which the box cannot hold its drivers. */
  readonly least: Edges;
  /** Least length of the second chamber, m. */
  readonly leastBehind: number;
  /** Area of the partition. */
  readonly area: (inner: Edges) => number;
  /** The inner edges of both chambers, if the first one is so long. */
  readonly chambers: (inner: Edges, length: number) => readonly [first: Edges, second: Edges];
  /** Places the vents and the drivers, with a first chamber of this length. */
  readonly place: (
    outer: Edges,
    length: number,
    vents: readonly [first: Vent, second?: Vent | undefined],
  ) => PartitionFit | Impossible;
  readonly board: (outer: Edges) => Panel;
  /** The holes for the drivers, measured on the partition. */
  readonly holes: (outer: Edges, length: number, fit: Fit) => Hole[];
  /** A hole of the second chamber as a builder measures it: on a panel of the box, or on the partition. */
  readonly ofSecond: (outer: Edges, length: number, hole: Hole) => Hole;
}

/**
 * The partition across an edge of the box, with all drivers in it; `through` says that the vent of the second chamber opens through
 * it as well.
 */
export function partitionAcross(job: Job, choice: DriverChoice, edge: EdgeName, through = false): Partition {
  const { space } = job;
  const { panelThickness: t, cutoutPlay } = space;
  const { drivers } = choice;
  const { outerDiameter = 0, cutoutDiameter = 0, Xmax = 0 } = drivers.driver;
  const axis = edgeNames.indexOf(edge) as 0 | 1 | 2;
  const reach = Math.max(1e-3, driverDepth(drivers) - t);
  const frame = FRAME + Xmax;
  // Inside the first chamber a driver takes the room of its frame, behind the partition that of its magnet.
  const common = { outerDiameter: metres(outerDiameter), count: drivers.fronts };
  const frames = { ...common, cutoutDiameter: metres(outerDiameter), depth: metres(t + frame), faces: [FAR[axis]!] };
  // As wide as its frame, so that a place behind the partition is one in front of it.
  const magnets = { ...frames, depth: metres(t + reach), faces: [NEAR[axis]!] };
  const others = [0, 1, 2].filter((one) => one !== axis) as [0 | 1 | 2, 0 | 1 | 2];
  const leastBehind = reach + BEHIND;
  const across = outerDiameter + 2 * cutoutPlay;
  const least = [0, 1, 2].map((one) => {
    const own = one === axis ? frame + t + leastBehind : across;
    return space.exactly.includes(edgeNames[one]!) ? Math.max(own, space[edgeNames[one]!] - 2 * t) : own;
  }) as unknown as Edges;
  const layout = driverLayout(job, choice);
  // A flange on a panel may reach over the edges of its neighbours; one on the partition stands between them.
  const edgeMargin = through ? t + cutoutPlay : layout.edgeMargin;
  const along = (inner: Edges, length: number) =>
    inner.map((size, one) => (one === axis ? length : size)) as unknown as Edges;
  const chambers = (inner: Edges, length: number) =>
    [along(inner, length), along(inner, inner[axis] - t - length)] as const;

  /** A chamber with the panels around it, as core's `fit` takes it. */
  const room = (outer: Edges, length: number) => ({
    outer: outerSizes(along(outer, length + 2 * t)),
    thickness: metres(t),
    cutoutMargin: metres(cutoutPlay),
  });

  function place(
    outer: Edges,
    length: number,
    [vent, secondVent]: readonly [first: Vent, second?: Vent | undefined],
  ): PartitionFit | Impossible {
    const behind = outer[axis] - 3 * t - length;
    if (behind < leastBehind) return impossible('no-room-behind', 'The drivers find no room behind the partition.');
    // Behind the partition the drivers are deeper: there they find their places first.
    const second =
      secondVent && fit({ ...room(outer, behind), edgeMargin: metres(edgeMargin), driver: magnets, vent: secondVent });
    if (second && !second.ok) return second;
    const mouths = through ? second?.placement.vent : undefined;
    const flange = metres(flangeOf(secondVent));
    const placed = fit({
      ...room(outer, length),
      driver: second ? { ...frames, centres: second.placement.drivers.flatMap(({ centres }) => centres) } : frames,
      // A vent that opens through the partition needs its flange, and free air in front of it.
      ...(mouths && {
        radiator: {
          outerDiameter: flange,
          cutoutDiameter: flange,
          depth: metres(t + (secondVent?.clearance as number)),
          count: mouths.centres.length,
          faces: [FAR[axis]!],
          centres: mouths.centres,
        },
      }),
      vent,
    });
    if (!placed.ok) return placed;
    const { placement, slack } = placed;
    const behindDriver = metres(Math.max(0, behind - reach));
    const besideCutout = metres(slack.cutout + (outerDiameter - cutoutDiameter) / 2);
    const moved = (at: readonly number[]) => at.map((one, k) => metres(k === axis ? one + t + length : one)) as never;
    return {
      ...placed,
      placement: {
        ...placement,
        drivers: placement.drivers.map((seat) => ({ ...seat, depthLeft: behindDriver, cutoutLeft: besideCutout })),
        radiators: [],
      },
      solids: [
        // A driver reaches through the partition into the second chamber.
        ...placed.solids
          .filter(({ part }) => part !== 'radiator')
          .map((solid) =>
            solid.part === 'driver'
              ? {
                  ...solid,
                  greatest: solid.greatest.map((at, one) => (one === axis ? metres(at + t + reach) : at)) as never,
                }
              : solid,
          ),
        ...(second?.solids ?? [])
          .filter(({ part }) => part !== 'driver')
          .map((solid) => ({ ...solid, least: moved(solid.least), greatest: moved(solid.greatest) })),
      ],
      slack: { ...slack, driverDepth: behindDriver, cutout: besideCutout },
      ...(second?.placement.vent && { second: second.placement.vent, secondSlack: second.slack }),
    };
  }

  /** Sizes of the partition across and up, as one looks at it from the first chamber. */
  const sizes = (outer: Edges): readonly [number, number] => {
    const [a, b] = axis === 0 ? [2, 1] : axis === 1 ? [0, 2] : [0, 1];
    return [outer[a]! - 2 * t, outer[b]! - 2 * t];
  };

  /** A hole in the partition, measured from its own edges. */
  function onBoard(outer: Edges, length: number, hole: Hole): Hole {
    const board = { name: 'partition', size: sizes(outer), from: [t, t, t + length] as const };
    return { ...hole, across: hole.across - t, up: hole.up - t, board };
  }

  return {
    axis,
    inside: [FAR[axis]!, NEAR[axis]!],
    layouts: [
      { ...layout, bodies: roundBodies('driver', frames) },
      { ...layout, edgeMargin, bodies: roundBodies('driver', magnets) },
    ],
    least,
    leastBehind,
    area: (inner) => inner[others[0]] * inner[others[1]],
    chambers,
    place,
    board: (outer) => {
      const [length, width] = sizes(outer);
      const names = axis === 0 ? 'depth × height' : axis === 1 ? 'width × depth' : 'width × height';
      return { name: `partition (${names}, inside)`, count: 1, length, width };
    },
    holes: (outer, length, { placement }) =>
      placement.drivers.flatMap(({ centres }) =>
        centres.map((centre) => onBoard(outer, length, holeAt('driver', NEAR[axis]!, cutoutDiameter, centre))),
      ),
    ofSecond: (outer, length, hole) => {
      if (hole.face === NEAR[axis]) return onBoard(outer, length, hole);
      const [across, up] = axesOf(hole.face);
      const by = t + length;
      return {
        ...hole,
        across: hole.across + (across === axis ? by : 0),
        up: hole.up + (up === axis ? by : 0),
      };
    },
  };
}

/** The diameter of a round vent on the outer surface of its panel, m. */
const flangeOf = (vent: Vent | undefined): number =>
  vent !== undefined && 'flangeDiameter' in vent ? (vent.flangeDiameter as number) : 0;
