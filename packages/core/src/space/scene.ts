import { NANOMETRE } from '../quantity/nanometre.js';
import { overlap, overlappingShifts } from './overlap.js';
import { type Block, emptyBlock } from './solids.js';
import { emptyShape, firstLeg, flange, type VentShape } from './vent-solids.js';
import type { Walls } from './walls.js';

/** A block of bodies on one face, in the view of the search (see placement.ts). */
export interface Stand {
  face: number;
  columns: number;
  rows: number;
  /** The part behind the panel; undefined when nothing reaches inside. */
  readonly block: Block;
  inside: boolean;
  /** The frames, with the gap around them. */
  readonly frame: Block;
  /** Whether the frames are on the vent's face. */
  beside: boolean;
}

/** Everything that a vent can meet, in its view. */
export interface Scene {
  readonly size: readonly [number, number, number];
  readonly vent: VentShape;
  readonly stands: readonly Stand[];
  /** Of an interior that is no cuboid. */
  readonly walls: Walls | undefined;
}

const emptyStand = (): Stand => ({
  face: 0,
  columns: 1,
  rows: 1,
  block: emptyBlock(),
  inside: false,
  frame: emptyBlock(),
  beside: false,
});

export const emptyScene = (size: Scene['size'], stands: number, walls?: Walls): Scene => ({
  size,
  vent: emptyShape(),
  stands: Array.from({ length: stands }, emptyStand),
  walls,
});

const disc = emptyBlock();
const range = new Float64Array(2);

/** Whether the flange overlaps a frame, or the vent's place on its face is not inside. */
export function framed({ vent, stands, walls }: Scene, along: number, across: number, less: number): boolean {
  if (walls) {
    firstLeg(disc, vent, along, across, 2 * NANOMETRE, -vent.footMargin);
    if (!walls.holds(disc)) return true;
  }
  for (let i = 0; i < stands.length; i++) {
    const stand = stands[i]!;
    if (!stand.beside) continue;
    flange(disc, vent, along, across, less);
    if (overlap(disc, stand.frame)) return true;
  }
  return false;
}

/** Whether a part overlaps a body, or is not inside. */
export function meets({ stands, walls }: Scene, part: Block): boolean {
  if (walls && !walls.holds(part)) return true;
  for (let i = 0; i < stands.length; i++) {
    const stand = stands[i]!;
    if (stand.inside && overlap(part, stand.block)) return true;
  }
  return false;
}

/** How far a disc can move along an axis from its place, with the wall at `room`; negative when it cannot be there at all. */
export function freeWay({ stands, walls }: Scene, part: Block, axis: number, room: number): number {
  let way = walls ? Math.min(room, walls.way(part, axis)) : room;
  for (let i = 0; i < stands.length; i++) {
    const stand = stands[i]!;
    if (!stand.inside || !overlappingShifts(part, stand.block, axis, range) || range[1]! <= 0) continue;
    if (range[0]! < way) way = range[0]!;
  }
  return way;
}
