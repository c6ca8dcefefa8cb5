import { overlap, overlappingShifts } from './overlap.js';
import { type Block, emptyBlock } from './solids.js';
import { bend, bendLength, firstLeg, flange, secondLeg, type VentShape } from './vent-solids.js';

/** What a vent meets, in its view (see placement.ts). */
export interface Scene {
  readonly size: readonly [number, number, number];
  readonly vent: VentShape;
  /** The driver behind its panel; undefined when it doesn't reach in. */
  readonly driver: Block;
  driverInside: boolean;
  /** The driver's frame and the gap around it, when it is on the vent's face. */
  readonly frame: Block;
  frameOnFace: boolean;
}

/** Where a bent vent stands. */
export interface BentPlace {
  along: number;
  /** First leg without panel and bend; second leg behind the bend. */
  firstLeg: number;
  secondLeg: number;
}

const part = emptyBlock();
const range = new Float64Array(2);
const starts = new Float64Array(4);
const depths = new Float64Array(3);

/** Solids that interlock by less than this part of a radius touch: it keeps rounding from deciding. */
const touching = 1e-9;

const framed = (scene: Scene, along: number, across: number, less: number): boolean => {
  if (!scene.frameOnFace) return false;
  flange(part, scene.vent, along, across, less);
  return overlap(part, scene.frame);
};

/** How far `part`, a disc, may go along an axis from where it is, with the wall at `room`; negative when it can't be there. */
function free(scene: Scene, axis: number, room: number): number {
  if (!scene.driverInside || !overlappingShifts(part, scene.driver, axis, range) || range[1]! <= 0) return room;
  return Math.min(room, range[0]!);
}

/** Longest straight vent at a place on its face, panel included; −1 when none stands there. */
export function straightReach(scene: Scene, along: number, across: number): number {
  const { vent, size } = scene;
  const less = touching * vent.radius;
  if (framed(scene, along, across, less)) return -1;
  firstLeg(part, vent, along, across, 0, less);
  const inside = free(scene, 0, size[0]) - vent.clearance;
  return inside < 0 ? -1 : vent.panel + inside;
}

/**
 * Longest vent with one bend whose second leg runs up axis 1, for a given driver and a given place across; longer than
 * `least`, else −1. `deepest` bounds the first leg.
 *
 * Why few candidates are enough. The vent only gains when it starts lower along axis 1, until something is met: the near
 * limit, or the place where flange, first leg or bend just touch the driver. And for the depth of the first leg, the
 * places that a driver forbids are convex, so the sum of both legs, taken along their border, is convex: its maximum is
 * at an end, that is at the greatest depth, or where the bend or the second leg just passes before the driver.
 */
export function bentReach(
  scene: Scene,
  near: number,
  far: number,
  across: number,
  deepest: number,
  least: number,
  place: BentPlace,
): number {
  const { vent, size, driver } = scene;
  const { radius, bendRadius } = vent;
  const fixed = vent.panel + bendLength(vent);
  const room = size[1] - vent.clearance - bendRadius;
  const most = Math.min(deepest, size[0] - bendRadius - radius);
  const less = touching * radius;
  let best = least;
  let found = -1;

  depths[0] = most;
  let depthCount = 1;
  if (scene.driverInside) {
    bend(part, vent, near, across, 0);
    if (overlappingShifts(part, driver, 0, range)) depths[depthCount++] = range[0]!;
    secondLeg(part, vent, near + bendRadius, size[1], across, 0);
    if (overlappingShifts(part, driver, 0, range)) depths[depthCount++] = range[0]!;
  }
  for (let i = 0; i < depthCount; i++) {
    const depth = depths[i]!;
    if (!(depth >= 0 && depth <= most) || fixed + depth + room - near <= best) continue;
    starts[0] = near;
    let startCount = 1;
    if (scene.frameOnFace) {
      flange(part, vent, near, across);
      if (overlappingShifts(part, scene.frame, 1, range)) starts[startCount++] = near + range[1]!;
    }
    if (scene.driverInside) {
      firstLeg(part, vent, near, across, depth);
      if (overlappingShifts(part, driver, 1, range)) starts[startCount++] = near + range[1]!;
      bend(part, vent, near, across, depth);
      if (overlappingShifts(part, driver, 1, range)) starts[startCount++] = near + range[1]!;
    }
    for (let k = 0; k < startCount; k++) {
      const along = starts[k]!;
      if (!(along >= near && along <= far) || fixed + depth + room - along <= best) continue;
      const length = secondLegAt(scene, along, across, depth, less);
      if (length >= 0 && fixed + depth + length > best) {
        best = fixed + depth + length;
        found = best;
        place.along = along;
        place.firstLeg = depth;
        place.secondLeg = length;
      }
    }
  }
  return found;
}

/** Longest second leg of a vent that starts here; negative when it can't. */
function secondLegAt(scene: Scene, along: number, across: number, depth: number, less: number): number {
  const { vent, driver, size } = scene;
  if (framed(scene, along, across, less)) return -1;
  const start = along + vent.bendRadius;
  if (scene.driverInside) {
    firstLeg(part, vent, along, across, depth, less);
    if (overlap(part, driver)) return -1;
    bend(part, vent, along, across, depth, less);
    if (overlap(part, driver)) return -1;
  }
  secondLeg(part, vent, start, start, across, depth, less);
  return free(scene, 1, size[1] - start) - vent.clearance;
}
