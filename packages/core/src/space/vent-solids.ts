import { foldRadius, slotAlongs, slotBoards } from '../vent/slot-boards.js';
import type { Layout } from './fit-input.js';
import { type Block, span } from './solids.js';
import type { SlotBody, VentBody } from './vent-body.js';

/** A vent in its view (see placement.ts): plain numbers, written by the search. */
export interface VentShape {
  /** Whether it is a cuboid: a slot, or a row of several vents, which is kept free as a whole. */
  cuboid: boolean;
  /** Half the outer size in the plane of the bend, including its own walls. */
  radius: number;
  /** Half the width of the whole row across both legs. */
  halfAcross: number;
  flangeRadius: number;
  flangeHalfAcross: number;
  clearance: number;
  /** From the middle of the first leg to the start of the second one. */
  bendRadius: number;
  /** Length of the bend along the centre line of the air. */
  bendLength: number;
  /** Least length of each leg: along a leg of a slot lies the edge of the inner board of its other leg. */
  leastLeg: number;
  /** Whether the second leg lies on the panel opposite to the face. */
  onWall: boolean;
  /** Thickness of the panel. */
  panel: number;
  /** How much wider than the vent its place on the face is; only an interior that is no cuboid asks for it. */
  footMargin: number;
}

export const emptyShape = (): VentShape => ({
  cuboid: false,
  radius: 0,
  halfAcross: 0,
  flangeRadius: 0,
  flangeHalfAcross: 0,
  clearance: 0,
  bendRadius: 0,
  bendLength: 0,
  leastLeg: 0,
  onWall: false,
  panel: 0,
  footMargin: 0,
});

/** Writes a row of round vents. */
export function roundVent(shape: VentShape, body: VentBody, count: number, gap: number): void {
  const row = ((count - 1) * (body.flangeDiameter + gap)) / 2;
  shape.cuboid = count > 1;
  shape.radius = body.outerDiameter / 2;
  shape.halfAcross = shape.radius + row;
  shape.flangeRadius = body.flangeDiameter / 2;
  shape.flangeHalfAcross = shape.flangeRadius + row;
  shape.clearance = body.clearance;
  shape.bendRadius = body.bendRadius;
  shape.bendLength = (Math.PI / 2) * body.bendRadius;
  shape.leastLeg = 0;
  shape.onWall = false;
}

/**
 * Writes a row of slots. Panels of the box replace boards of it, so the outer size is less by these. The second leg starts at
 * the inner edge of the fold, which is half a board nearer to the middle of a slot that has only one of the two long boards.
 */
export function slotVent(
  shape: VentShape,
  body: SlotBody,
  walls: Layout['vent']['walls'],
  count: number,
  gap: number,
): void {
  const { longSide, shortSide, wall } = body;
  const [onLong, onShort] = slotBoards[slotAlongs[walls]];
  const turn = foldRadius(shortSide);
  shape.cuboid = true;
  shape.radius = (shortSide + onLong * wall) / 2;
  const across = longSide + onShort * wall;
  shape.halfAcross = across / 2 + ((count - 1) * (across + gap)) / 2;
  shape.flangeRadius = shape.radius;
  shape.flangeHalfAcross = shape.halfAcross;
  shape.clearance = body.clearance;
  shape.bendRadius = turn - ((2 - onLong) * wall) / 2;
  shape.bendLength = (Math.PI / 2) * turn;
  shape.leastLeg = wall;
  shape.onWall = walls > 0;
}

const form = (vent: VentShape, axis: number) => (vent.cuboid ? -1 : axis);

/** The straight part from the panel inwards. */
export function firstLeg(block: Block, vent: VentShape, along: number, across: number, length: number, less = 0): void {
  block.axis = form(vent, 0);
  span(block, 0, 0, length);
  span(block, 1, along - vent.radius + less, along + vent.radius - less);
  span(block, 2, across - vent.halfAcross + less, across + vent.halfAcross - less);
}

/** The cuboid around a bend that starts at the depth `length`. */
export function bend(block: Block, vent: VentShape, along: number, across: number, length: number, less = 0): void {
  block.axis = -1;
  span(block, 0, length + less, length + vent.bendRadius + vent.radius - less);
  span(block, 1, along - vent.radius + less, along + Math.max(vent.bendRadius, vent.radius) - less);
  span(block, 2, across - vent.halfAcross + less, across + vent.halfAcross - less);
}

/** The straight part after the bend, from `start` to `end` along the panel. */
export function secondLeg(
  block: Block,
  vent: VentShape,
  start: number,
  end: number,
  across: number,
  length: number,
  less = 0,
): void {
  const depth = length + vent.bendRadius;
  block.axis = form(vent, 1);
  span(block, 0, depth - vent.radius + less, depth + vent.radius - less);
  span(block, 1, start, end);
  span(block, 2, across - vent.halfAcross + less, across + vent.halfAcross - less);
}

/** The flange on the outer surface: a disc, or a rectangle for slots and rows. */
export function flange(block: Block, vent: VentShape, along: number, across: number, less = 0): void {
  block.axis = form(vent, 0);
  span(block, 0, -1, 0);
  span(block, 1, along - vent.flangeRadius + less, along + vent.flangeRadius - less);
  span(block, 2, across - vent.flangeHalfAcross + less, across + vent.flangeHalfAcross - less);
}
