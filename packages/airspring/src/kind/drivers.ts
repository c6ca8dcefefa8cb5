import type { DriverGroup } from '@airspring/core/driver';
import { estimatedDriverVolume, faces, type Layout, type RoundBody, roundBodies } from '@airspring/core/space';
import type { DriverChoice, Job } from '../job/job.js';
import type { Phrase } from './phrase.js';
import { metres } from './placing.js';

const GAP = 0.005;
const EDGE_MARGIN = 0.005;

/** How far drivers stand inwards from the outside of their panel, m: of an isobaric pair one stands behind the other. */
export const driverDepth = ({ driver, isobaric }: DriverGroup): number => (isobaric ? 2 : 1) * (driver.depth ?? 0);

/** The drivers as a box must keep room for them, as core's `fit` takes them. */
export function driverRoom({ drivers, seating }: DriverChoice) {
  const { outerDiameter = 0, cutoutDiameter = 0 } = drivers.driver;
  return {
    outerDiameter: metres(outerDiameter),
    cutoutDiameter: metres(cutoutDiameter),
    depth: metres(driverDepth(drivers)),
    count: drivers.fronts,
    ...seating,
  };
}

/** What a layout says of panels and drivers, on all the faces that they may have. */
export function driverLayout({ space }: Job, choice: DriverChoice): Omit<Layout, 'vent'> {
  return {
    thickness: faces.map(() => space.panelThickness),
    gap: GAP,
    edgeMargin: EDGE_MARGIN,
    cutoutMargin: space.cutoutPlay,
    bodies: roundBodies('driver', driverRoom(choice)),
  };
}

/** Inner edges below which no box holds one of these bodies on any face that it may have. */
function leastOf({ space }: Job, { outerDiameter, cutoutDiameter, depth, faces: own, opposed }: RoundBody) {
  const { panelThickness: t, cutoutPlay } = space;
  const across = Math.max(cutoutDiameter + 2 * cutoutPlay, outerDiameter + 2 * EDGE_MARGIN - 2 * t);
  const inwards = (opposed ? 2 : 1) * Math.max(1e-3, depth - t);
  return [0, 1, 2].map((axis) => Math.min(...own.map((face) => (face >> 1 === axis ? inwards : across))));
}

/** Inner edges below which no box holds these bodies; those of `driverLayout` where none are told. */
export function leastFor(job: Job, choice: DriverChoice, bodies = driverLayout(job, choice).bodies) {
  const least = bodies.map((body) => leastOf(job, body));
  return [0, 1, 2].map((axis) => Math.max(...least.map((edges) => edges[axis]!))) as [number, number, number];
}

/** What stands in a box whatever its kind. */
export interface Contents {
  /** m³. */
  readonly taken: number;
  /** What of it is an estimate, told with its amount. */
  readonly assumed: readonly Phrase[];
}

/**
 * Air that drivers and bracing take: the sheet's figure, or the estimate of core from cutout and depth. Of an isobaric pair
 * the one in front plays into a chamber of its own, a tube of the cutout's diameter up to the frame of the other.
 */
export function contentsOf({ space }: Job, { drivers }: DriverChoice): Contents {
  const { displacedVolume, cutoutDiameter = 0, depth = 0 } = drivers.driver;
  const inside = Math.max(0, depth - space.panelThickness);
  const one = displacedVolume ?? estimatedDriverVolume(cutoutDiameter, drivers.isobaric ? depth : inside);
  const chamber = drivers.isobaric ? (Math.PI / 4) * cutoutDiameter ** 2 * inside : 0;
  const each = drivers.fronts > 1 ? 'Each driver inside the box' : 'The driver';
  const assumed: Phrase[] = [
    ...(displacedVolume === undefined
      ? [
          [
            `${each} is taken to fill `,
            [one, 'volume'],
            ', estimated from its cutout and its depth, good to a third.',
          ] as const,
        ]
      : []),
    ...(drivers.isobaric
      ? [
          [
            'The chamber between the drivers of each pair is taken to fill ',
            [chamber, 'volume'],
            ', a tube as wide as the cutout.',
          ] as const,
        ]
      : []),
  ];
  return { taken: space.bracing + drivers.fronts * (one + chamber), assumed };
}
