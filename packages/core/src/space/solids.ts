import { type Length, si } from '../quantity/index.js';
import { type Face, faces } from './cuboid.js';

/**
 * A cylinder along an axis (0, 1, 2 for x, y, z) or a cuboid (axis −1), given by two corners of its enclosing cuboid. It is
 * mutable on purpose: the search writes to the same few solids again and again.
 */
export interface Block {
  axis: number;
  readonly low: [number, number, number];
  readonly high: [number, number, number];
}

export const emptyBlock = (): Block => ({ axis: -1, low: [0, 0, 0], high: [0, 0, 0] });

/** Writes the range of one axis. */
export function span(block: Block, axis: number, low: number, high: number): void {
  block.low[axis] = low;
  block.high[axis] = high;
}

/** The axis perpendicular to a face. */
export const axisOf = (face: number): number => face >> 1;
/** Whether the face is at the far end of its axis: right, top or back. */
export const isFar = (face: number): boolean => (face & 1) === 1;
export const faceName = (face: number): Face => faces[face]!;

/** A solid inside the box, in metres from the left, bottom, front outer edge. The record survives JSON. */
export interface Solid {
  /** A fit finds the first four; a board divides the inside. */
  readonly part: 'driver' | 'radiator' | 'vent' | 'clearance' | 'board';
  readonly form: 'cylinder' | 'cuboid';
  /** The axis of a cylinder. */
  readonly axis?: 'x' | 'y' | 'z';
  readonly least: readonly [Length, Length, Length];
  readonly greatest: readonly [Length, Length, Length];
}

type Corner = readonly [number, number, number];
const corner = (at: Corner, thickness: readonly number[]): Solid['least'] => [
  si('length', at[0] + thickness[0]!),
  si('length', at[1] + thickness[2]!),
  si('length', at[2] + thickness[4]!),
];

const axes = ['x', 'y', 'z'] as const;

/** The record of a block given in inner coordinates. An interior of one's own is asked about millions of them. */
export function solid(part: Solid['part'], block: Block, thickness: readonly number[]): Solid {
  const least = corner(block.low, thickness);
  const greatest = corner(block.high, thickness);
  if (block.axis < 0) return { part, form: 'cuboid', least, greatest };
  return { part, form: 'cylinder', axis: axes[block.axis]!, least, greatest };
}
