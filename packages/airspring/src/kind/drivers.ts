import type { DriverGroup } from '@airspring/core/driver';
import { estimatedDriverVolume, faces, type Layout } from '@airspring/core/space';
import type { DriverChoice, Job } from '../job/job.js';
import type { Phrase } from './phrase.js';

const GAP = 0.005;
const EDGE_MARGIN = 0.005;

/** How far drivers stand inwards from the outside of their panel, m: of an isobaric pair one stands behind the other. */
export const driverDepth = ({ driver, isobaric }: DriverGroup): number => (isobaric ? 2 : 1) * (driver.depth ?? 0);

/** Sizes of each driver as a box must keep room for it: the cutout with its play, the frame at least as wide. */
export function driverRoom({ space }: Job, drivers: DriverGroup) {
  const { outerDiameter = 0, cutoutDiameter = 0 } = drivers.driver;
  const cutout = cutoutDiameter + 2 * space.cutoutPlay;
  return {
    outerDiameter: Math.max(outerDiameter, cutout),
    cutoutDiameter: cutout,
    depth: driverDepth(drivers),
    count: drivers.fronts,
  };
}

/** The driver's part of a layout, on the front. */
export function driverLayout(job: Job, drivers: DriverGroup): Omit<Layout, 'vent'> {
  return {
    thickness: faces.map(() => job.space.panelThickness),
    gap: GAP,
    edgeMargin: EDGE_MARGIN,
    // The cutouts have their play already.
    cutoutMargin: 0,
    bodies: [{ ...driverRoom(job, drivers), part: 'driver', faces: [faces.indexOf('front')], opposed: false }],
  };
}

/** Inner edges below which no box holds these drivers on its front. */
export function leastFor(job: Job, drivers: DriverGroup): [number, number, number] {
  const { outerDiameter, cutoutDiameter, depth } = driverRoom(job, drivers);
  const t = job.space.panelThickness;
  const across = Math.max(cutoutDiameter, outerDiameter + 2 * EDGE_MARGIN - 2 * t);
  return [across, across, Math.max(1e-3, depth - t)];
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
