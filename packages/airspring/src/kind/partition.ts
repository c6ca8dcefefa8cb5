import type { Impossible } from '@airspring/core/fault';
import { impossible } from '@airspring/core/fault';
import { type Face, type Fit, type FitInput, fit, type Layout, roundBodies } from '@airspring/core/space';
import type { DriverChoice, Job } from '../job/job.js';
import { type Hole, holeAt, type Panel } from './build-record.js';
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

/** A box with two chambers. The drivers stand in the partition with their frames in the first one. */
export interface Partition {
  readonly axis: 0 | 1 | 2;
  /** The face of the first chamber that is no panel of the box. */
  readonly inside: Face;
  /** The bodies in the first chamber, as core's `fit` takes them. */
  readonly layout: Omit<Layout, 'vent'>;
  /** Inner edges below which the box cannot hold its drivers. */
  readonly least: Edges;
  /** Least length of the second chamber, m. */
  readonly leastBehind: number;
  /** Area of the partition. */
  readonly area: (inner: Edges) => number;
  /** The inner edges of the first chamber, if it is so long. */
  readonly first: (inner: Edges, length: number) => Edges;
  /** Places the vent and the drivers, in a first chamber of this length. */
  readonly place: (outer: Edges, length: number, vent: NonNullable<FitInput['vent']>) => Fit | Impossible;
  readonly board: (outer: Edges) => Panel;
  /** The holes for the drivers, measured on the partition. */
  readonly holes: (outer: Edges, length: number, fit: Fit) => Hole[];
}

/** The partition across an edge of the box, with all drivers in it. */
export function partitionAcross(job: Job, choice: DriverChoice, edge: EdgeName): Partition {
  const { space } = job;
  const { panelThickness: t, cutoutPlay } = space;
  const { drivers } = choice;
  const { outerDiameter = 0, cutoutDiameter = 0, Xmax = 0 } = drivers.driver;
  const axis = edgeNames.indexOf(edge) as 0 | 1 | 2;
  const inside = FAR[axis]!;
  const reach = Math.max(1e-3, driverDepth(drivers) - t);
  const frame = FRAME + Xmax;
  // Inside the first chamber a driver takes the room of its frame.
  const bodies = {
    outerDiameter: metres(outerDiameter),
    cutoutDiameter: metres(outerDiameter),
    depth: metres(t + frame),
    count: drivers.fronts,
    faces: [inside],
  };
  const others = [0, 1, 2].filter((one) => one !== axis) as [0 | 1 | 2, 0 | 1 | 2];
  const leastBehind = reach + BEHIND;
  const across = outerDiameter + 2 * cutoutPlay;
  const least = [0, 1, 2].map((one) => {
    const own = one === axis ? frame + t + leastBehind : across;
    return space.exactly.includes(edgeNames[one]!) ? Math.max(own, space[edgeNames[one]!] - 2 * t) : own;
  }) as unknown as Edges;
  const first = (inner: Edges, length: number) =>
    inner.map((size, one) => (one === axis ? length : size)) as unknown as Edges;

  function place(outer: Edges, length: number, vent: NonNullable<FitInput['vent']>): Fit | Impossible {
    const behind = outer[axis] - 3 * t - length;
    if (behind < leastBehind) return impossible('no-room-behind', 'The drivers find no room behind the partition.');
    const placed = fit({
      outer: outerSizes(first(outer, length + 2 * t)),
      thickness: metres(t),
      driver: bodies,
      cutoutMargin: metres(cutoutPlay),
      vent,
    });
    if (!placed.ok) return placed;
    const { placement, slack } = placed;
    const behindDriver = metres(Math.max(0, behind - reach));
    const besideCutout = metres(slack.cutout + (outerDiameter - cutoutDiameter) / 2);
    return {
      ...placed,
      placement: {
        ...placement,
        drivers: placement.drivers.map((seat) => ({ ...seat, depthLeft: behindDriver, cutoutLeft: besideCutout })),
      },
      // A driver reaches through the partition into the second chamber.
      solids: placed.solids.map((solid) =>
        solid.part === 'driver'
          ? {
              ...solid,
              greatest: solid.greatest.map((at, one) => (one === axis ? metres(at + t + reach) : at)) as never,
            }
          : solid,
      ),
      slack: { ...slack, driverDepth: behindDriver, cutout: besideCutout },
    };
  }

  /** Sizes of the partition across and up, as one looks at it from the first chamber. */
  const sizes = (outer: Edges): readonly [number, number] => {
    const [a, b] = axis === 0 ? [2, 1] : axis === 1 ? [0, 2] : [0, 1];
    return [outer[a]! - 2 * t, outer[b]! - 2 * t];
  };

  return {
    axis,
    inside,
    layout: { ...driverLayout(job, choice), bodies: roundBodies('driver', bodies) },
    least,
    leastBehind,
    area: (inner) => inner[others[0]] * inner[others[1]],
    first,
    place,
    board: (outer) => {
      const [length, width] = sizes(outer);
      const names = axis === 0 ? 'depth × height' : axis === 1 ? 'width × depth' : 'width × height';
      return { name: `partition (${names}, inside)`, count: 1, length, width };
    },
    holes: (outer, length, { placement }) =>
      placement.drivers.flatMap(({ centres }) =>
        centres.map((centre) => {
          const hole = holeAt('driver', NEAR[axis]!, cutoutDiameter, centre);
          const board = { name: 'partition', size: sizes(outer), from: [t, t, t + length] as const };
          return { ...hole, across: hole.across - t, up: hole.up - t, board };
        }),
      ),
  };
}
