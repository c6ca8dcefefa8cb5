import { overlappingShifts } from './overlap.js';
import { framed, freeWay, meets, type Scene } from './scene.js';
import { emptyBlock } from './solids.js';
import { bend, firstLeg, flange, secondLeg } from './vent-solids.js';

/** Where a bent vent stands. */
export interface BentPlace {
  along: number;
  /** The first leg without panel and bend, and the second leg after the bend. */
  firstLeg: number;
  secondLeg: number;
}

const part = emptyBlock();
const range = new Float64Array(2);
/** Further depths and starts that are tried in an interior that is no cuboid. */
const STEPS = 4;
/** One place for each way to touch one of at most 64 bodies, and one more. */
const starts = new Float64Array(193 + STEPS + 1);
const depths = new Float64Array(130 + STEPS + 2);
/** Whether the place on the face is free, for each start on the grid; the same for all depths. */
const freeOnFace: (boolean | undefined)[] = Array(STEPS + 1);

/** Solids that overlap by less than this fraction of a radius count as touching, so that rounding decides nothing. */
const touching = 1e-9;

/** The longest straight vent at a place on its face, including the panel; −1 when no vent fits there. */
export function straightReach(scene: Scene, along: number, across: number): number {
  const { vent, size } = scene;
  const less = touching * vent.radius;
  if (framed(scene, along, across, less)) return -1;
  firstLeg(part, vent, along, across, 0, less);
  const inside = freeWay(scene, part, 0, size[0]) - vent.clearance;
  return inside < 0 ? -1 : vent.panel + inside;
}

/**
 * The longest vent with one bend whose second leg runs up axis 1, for given bodies and a given place across; −1 when it is not
 * longer than `least`. `deepest` bounds the first leg.
 *
 * Few candidates are enough, for two reasons. First, the vent gets longer when it starts lower along axis 1, until it reaches
 * the near limit, or until flange, first leg or bend just touch a body. Second, the depths of the first leg that a body forbids
 * form a convex set, so the sum of both legs along its border is convex and has its maximum at an end: at the greatest depth,
 * where the bend or the second leg just passes in front of the body, or at the least depth. A slot on panels has no
 * choice: it starts on its panel, and its first leg runs to the opposite one.
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
  const { vent, size, stands, walls } = scene;
  const { radius, bendRadius } = vent;
  const fixed = vent.panel + vent.bendLength;
  const room = size[1] - vent.clearance - bendRadius;
  const deep = size[0] - bendRadius - radius;
  if (vent.onWall && deepest < deep) return -1;
  const most = Math.min(deepest, deep);
  const less = touching * radius;
  const leastLeg = Math.max(0, vent.leastLeg - less);
  let best = least;
  let found = -1;

  depths[0] = most;
  let depthCount = 1;
  if (!vent.onWall) {
    depths[depthCount++] = leastLeg;
    for (let i = 0; i < stands.length; i++) {
      const stand = stands[i]!;
      if (!stand.inside) continue;
      bend(part, vent, near, across, 0);
      if (overlappingShifts(part, stand.block, 0, range)) depths[depthCount++] = range[0]!;
      secondLeg(part, vent, near + bendRadius, size[1], across, 0);
      if (overlappingShifts(part, stand.block, 0, range)) depths[depthCount++] = range[0]!;
    }
  }
  if (walls) {
    for (let n = 0; n < STEPS; n++) depths[depthCount++] = (n / STEPS) * most;
    bend(part, vent, far, across, 0);
    if (walls.holds(part)) depths[depthCount++] = Math.min(most, walls.way(part, 0));
    secondLeg(part, vent, near + bendRadius, size[1], across, 0);
    if (walls.holds(part)) depths[depthCount++] = Math.min(most, walls.way(part, 0));
  }
  freeOnFace.fill(undefined);
  for (let i = 0; i < depthCount; i++) {
    const depth = depths[i]!;
    if (!(depth >= leastLeg && depth <= most) || fixed + depth + room - near <= best) continue;
    let startCount = 0;
    const gridCount = walls ? STEPS + 1 : 1;
    for (let n = 0; n < gridCount; n++) starts[startCount++] = near + (n / STEPS) * (far - near);
    for (let s = 0; s < stands.length && !vent.onWall; s++) {
      const stand = stands[s]!;
      if (stand.beside) {
        flange(part, vent, near, across);
        if (overlappingShifts(part, stand.frame, 1, range)) starts[startCount++] = near + range[1]!;
      }
      if (!stand.inside) continue;
      firstLeg(part, vent, near, across, depth);
      if (overlappingShifts(part, stand.block, 1, range)) starts[startCount++] = near + range[1]!;
      bend(part, vent, near, across, depth);
      if (overlappingShifts(part, stand.block, 1, range)) starts[startCount++] = near + range[1]!;
    }
    if (walls) {
      bend(part, vent, far, across, depth);
      if (walls.holds(part)) starts[startCount++] = Math.max(near, far - walls.way(part, 1, true));
    }
    for (let k = 0; k < startCount; k++) {
      const along = starts[k]!;
      if (!(along >= near && along <= far) || fixed + depth + room - along <= best) continue;
      const known = k < gridCount ? freeOnFace[k] : undefined;
      const isFree = known ?? !framed(scene, along, across, less);
      if (k < gridCount) freeOnFace[k] = isFree;
      if (!isFree) continue;
      const length = secondLegAt(scene, along, across, depth, less);
      if (length >= leastLeg && fixed + depth + length > best) {
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

/** The longest second leg of a vent whose place on its face is free; negative when there is no room for one. */
function secondLegAt(scene: Scene, along: number, across: number, depth: number, less: number): number {
  const { vent, size } = scene;
  const start = along + vent.bendRadius;
  firstLeg(part, vent, along, across, depth, less);
  if (meets(scene, part)) return -1;
  bend(part, vent, along, across, depth, less);
  if (meets(scene, part)) return -1;
  secondLeg(part, vent, start, start, across, depth, less);
  return freeWay(scene, part, 1, size[1] - start) - vent.clearance;
}
