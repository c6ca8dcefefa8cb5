import { type Block, span } from './solids.js';

/** A vent in its view (see placement.ts): plain numbers, written by the search. */
export interface VentShape {
  /** Outside of the tube. */
  radius: number;
  /** Half the width across both legs: the radius, or more for a row of several vents. */
  halfAcross: number;
  flangeRadius: number;
  flangeHalfAcross: number;
  clearance: number;
  bendRadius: number;
  /** Of the panel. */
  panel: number;
}

/** A row of several vents is kept free as a cuboid. */
const form = (vent: VentShape, axis: number) => (vent.halfAcross > vent.radius ? -1 : axis);

/** Straight part from the panel inwards. */
export function firstLeg(block: Block, vent: VentShape, along: number, across: number, length: number, less = 0): void {
  block.axis = form(vent, 0);
  span(block, 0, 0, length);
  span(block, 1, along - vent.radius + less, along + vent.radius - less);
  span(block, 2, across - vent.halfAcross + less, across + vent.halfAcross - less);
}

/** Cuboid around a bend that starts at the depth `length`. */
export function bend(block: Block, vent: VentShape, along: number, across: number, length: number, less = 0): void {
  block.axis = -1;
  span(block, 0, length + less, length + vent.bendRadius + vent.radius - less);
  span(block, 1, along - vent.radius + less, along + vent.bendRadius - less);
  span(block, 2, across - vent.halfAcross + less, across + vent.halfAcross - less);
}

/** Straight part behind the bend, from `start` to `end` along the panel. */
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

/** Flange on the outer surface: a disc, or for a row of vents a rectangle. */
export function flange(block: Block, vent: VentShape, along: number, across: number, less = 0): void {
  block.axis = form(vent, 0);
  span(block, 0, -1, 0);
  span(block, 1, along - vent.flangeRadius + less, along + vent.flangeRadius - less);
  span(block, 2, across - vent.flangeHalfAcross + less, across + vent.flangeHalfAcross - less);
}

/** Centre-line length of a bend of 90°. */
export const bendLength = (vent: { readonly bendRadius: number }): number => (Math.PI / 2) * vent.bendRadius;
