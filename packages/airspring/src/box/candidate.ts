import type { DriverGroup } from '@airspring/core/driver';
import { si } from '@airspring/core/quantity';
import {
  compileLongestVent,
  compileSizeForNetVolume,
  estimatedDriverVolume,
  faces,
  type Layout,
  type ShapeRule,
  type VentBody,
} from '@airspring/core/space';
import { compileLengthForTuning } from '@airspring/core/vent';
import type { Job } from '../brief/job.js';
import type { Offer } from '../brief/offers.js';

/** What stays the same while volume, tuning and vent are searched. */
export interface Kin {
  readonly offer: Offer;
  readonly family: 'closed' | 'vented';
  /** Which outer edge is solved for; the two others fill the space. */
  readonly shape: ShapeRule;
  /** Vents, 0 for a closed box. */
  readonly vents: number;
}

/** Every combination that the brief allows. */
export const kinOf = (job: Job): Kin[] =>
  job.offers.flatMap((offer) =>
    job.families.flatMap((family) =>
      (['width', 'height', 'depth', 'proportional'] as const).flatMap((shape) =>
        (family === 'closed' ? [0] : job.vent.counts).map((vents) => ({ offer, family, shape, vents })),
      ),
    ),
  );

/** Free room kept around each tube, so that glue and an inexact print do not decide. */
export const PLAY = 0.002;

/** Sizes of a vent's parts by its inner diameter, as people print them: collar, elbow of one outer diameter's radius. */
export function ventBody({ vent }: Job, diameter: number): VentBody {
  const outerDiameter = diameter + 2 * vent.wall;
  return {
    outerDiameter,
    flangeDiameter: outerDiameter + 2 * vent.collar,
    clearance: diameter,
    bendRadius: outerDiameter,
  };
}

/** The same with room around it; without a collar the hole is what has to stay clear of its neighbours. */
export function withPlay(body: VentBody): VentBody {
  const outerDiameter = body.outerDiameter + 2 * PLAY;
  return { ...body, outerDiameter, flangeDiameter: Math.max(body.flangeDiameter, outerDiameter) };
}

/** Cross-section that the tubes take from the box, m². */
export const tubeArea = (body: VentBody, vents: number): number => (vents * Math.PI * body.outerDiameter ** 2) / 4;

/** How far drivers reach inwards from the outside of their panel, m: of an isobaric pair one stands behind the other. */
export const reachOf = ({ driver, isobaric }: DriverGroup): number => (isobaric ? 2 : 1) * (driver.depth ?? 0);

/**
 * Air that drivers and bracing take, m³: the sheet's figure, or the estimate of core from cutout and depth. Of an isobaric
 * pair the one in front plays into a chamber of its own, a tube of the cutout's diameter up to the frame of the other.
 */
function fixedContents({ space }: Job, { drivers }: Offer): number {
  const { displacedVolume, cutoutDiameter = 0, depth = 0 } = drivers.driver;
  const inside = Math.max(0, depth - space.panelThickness);
  const one = displacedVolume ?? estimatedDriverVolume(cutoutDiameter, drivers.isobaric ? depth : inside);
  const chamber = drivers.isobaric ? (Math.PI / 4) * cutoutDiameter ** 2 * inside : 0;
  return space.bracing + drivers.fronts * (one + chamber);
}

/** Geometry of one kin with plain numbers, for the search. */
export function compileGeometry(job: Job, { offer, shape, vents }: Kin) {
  const { space, vent } = job;
  const thickness = faces.map(() => space.panelThickness);
  const { outerDiameter = 0, cutoutDiameter = 0 } = offer.drivers.driver;
  const depth = reachOf(offer.drivers);
  const layout: Layout = {
    thickness,
    gap: 0.005,
    edgeMargin: 0.005,
    cutoutMargin: 0.002,
    bodies: [
      {
        part: 'driver',
        outerDiameter,
        cutoutDiameter,
        depth,
        count: offer.drivers.fronts,
        faces: [faces.indexOf('front')],
        opposed: false,
      },
    ],
    vent: {
      count: Math.max(1, vents),
      faces: vent.faces.map((face) => faces.indexOf(face)),
      bend: vent.bends > 0,
      walls: 0,
    },
  };
  const longest = compileLongestVent(layout);
  const size = compileSizeForNetVolume([space.width, space.height, space.depth], thickness, shape);
  const out = new Float64Array(2);
  return {
    contents: fixedContents(job, offer),
    /** Outer edges for a net volume and a volume that vents take. */
    size,
    /** Longest vent that fits between these outer edges, m; 0 when driver or vent do not fit at all. */
    longestVent: (edges: ArrayLike<number>, body: VentBody): number => {
      const [w, h, d] = [edges[0], edges[1], edges[2]] as [number, number, number];
      const walls = 2 * space.panelThickness;
      if (Math.min(w, h, d) <= walls) return 0;
      longest(w - walls, h - walls, d - walls, withPlay(body), out);
      return Math.max(out[0] as number, out[1] as number);
    },
  };
}

/** Length of a vent for a net volume and a tuning. */
export const compileVentLength = ({ air, vent }: Job, vents: number, diameter: number) =>
  compileLengthForTuning({ diameter: si('length', diameter), count: vents, wall: si('length', vent.wall) }, air);
