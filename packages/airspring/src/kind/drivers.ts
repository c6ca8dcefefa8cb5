import type { DriverGroup } from '@airspring/core/driver';
import { estimatedDriverVolume, faces, type Layout, type RoundBody, roundBodies } from '@airspring/core/space';
import type { DriverChoice, Job } from '../job/job.js';
import type { Phrase } from './phrase.js';
import { metres } from './placing.js';

const GAP = 0.005;
const EDGE_MARGIN = 0.005;

/** How deep drivers reach from the outside of their panel, m. In an isobaric pair, one stands behind the other. */
export const driverDepth = ({ driver, isobaric }: DriverGroup): number => (isobaric ? 2 : 1) * (driver.depth ?? 0);

/** The room that drivers need, as core's `fit` takes it. */
export function driverRoom({ drivers, seating, recess = { depth: 0, edgeMargin: 0 } }: DriverChoice) {
  const { outerDiameter = 0, cutoutDiameter = 0 } = drivers.driver;
  return {
    outerDiameter: metres(outerDiameter),
    cutoutDiameter: metres(cutoutDiameter),
    depth: metres(driverDepth(drivers) + recess.depth),
    edgeMargin: metres(Math.max(EDGE_MARGIN, recess.edgeMargin)),
    count: drivers.fronts,
    ...seating,
  };
}

/** The panels and the drivers of a layout, on all the faces where the drivers may stand. */
export function driverLayout({ space }: Job, choice: DriverChoice): Omit<Layout, 'vent'> {
  const { shape, panelThickness: t } = space;
  return {
    ...(shape && { interior: ([w, h, d]) => shape.interior([w + 2 * t, h + 2 * t, d + 2 * t]) }),
    thickness: faces.map(() => t),
    gap: GAP,
    edgeMargin: EDGE_MARGIN,
    cutoutMargin: space.cutoutPlay,
    bodies: roundBodies('driver', driverRoom(choice)),
  };
}

/** Inner edges below which no box holds one of these bodies, on whichever of its faces. */
function leastOf(
  { space }: Job,
  { outerDiameter, cutoutDiameter, depth, edgeMargin = 0, faces: own, opposed }: RoundBody,
) {
  const { panelThickness: t, cutoutPlay } = space;
  const across = Math.max(
    cutoutDiameter + 2 * cutoutPlay,
    outerDiameter + 2 * Math.max(EDGE_MARGIN, edgeMargin) - 2 * t,
  );
  const inwards = (opposed ? 2 : 1) * Math.max(1e-3, depth - t);
  return [0, 1, 2].map((axis) => Math.min(...own.map((face) => (face >> 1 === axis ? inwards : across))));
}

/** Inner edges that no box may fall below: where it holds these bodies, by default the drivers, and where an edge is exact. */
export function leastFor(job: Job, choice: DriverChoice, bodies = driverLayout(job, choice).bodies) {
  const { space } = job;
  const exact = (['width', 'height', 'depth'] as const).map((edge) =>
    space.exactly.includes(edge) ? space[edge] - 2 * space.panelThickness : 0,
  );
  const least = [exact, ...bodies.map((body) => leastOf(job, body))];
  return [0, 1, 2].map((axis) => Math.max(...least.map((edges) => edges[axis]!))) as [number, number, number];
}

/** The air that a box of any kind loses to what stands in it. */
export interface Contents {
  /** The volume taken, m³. */
  readonly taken: number;
  /** The parts of it that are estimates, each with its amount. */
  readonly assumed: readonly Phrase[];
}

/**
 * Air that drivers and bracing take: the figure of the sheet, or core's estimate from cutout and depth. In an isobaric pair, the
 * front driver plays into a chamber: a tube of the cutout's diameter up to the frame of the inner driver.
 */
export function contentsOf({ space }: Job, { drivers }: DriverChoice): Contents {
  const { displacedVolume, cutoutDiameter = 0, depth = 0 } = drivers.driver;
  const inside = Math.max(0, depth - space.panelThickness);
  const one = displacedVolume ?? estimatedDriverVolume(cutoutDiameter, drivers.isobaric ? depth : inside);
  const chamber = drivers.isobaric ? (Math.PI / 4) * cutoutDiameter ** 2 * inside : 0;
  const each = `${drivers.fronts > 1 ? 'each' : 'the'} ${drivers.isobaric ? 'inner driver' : 'driver'}`;
  const assumed: Phrase[] = [
    ...(displacedVolume === undefined
      ? [
          [
            `It is assumed that ${each} takes up `,
            [one, 'volume'],
            ' inside the box, estimated from its cutout and its depth. The estimate is good to about a third.',
          ] as const,
        ]
      : []),
    ...(drivers.isobaric
      ? [
          [
            'It is assumed that the chamber between the drivers of a pair takes up ',
            [chamber, 'volume'],
            ', as a tube that is as wide as the cutout.',
          ] as const,
        ]
      : []),
  ];
  return { taken: space.bracing + drivers.fronts * (one + chamber), assumed };
}
