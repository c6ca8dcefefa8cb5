import { NANOMETRE } from '../quantity/nanometre.js';
import { faces } from './cuboid.js';
import type { Layout } from './fit-input.js';
import type { Interior } from './interior.js';
import { turnBlock, type View } from './placement.js';
import { axisOf, type Block, emptyBlock, solid, span } from './solids.js';

/** The walls of an interior of one's own, in the axes of a view. The cuboid has none: its edges say everything. */
export interface Walls {
  /** Takes the walls of a box of these inner edges; it comes first. */
  readonly stand: (width: number, height: number, depth: number) => void;
  /** Whether a block is inside; a nanometre is left to rounding. */
  readonly holds: (block: Block) => boolean;
  /** How far a block inside can move up an axis of the view, or down. */
  readonly way: (block: Block, k: number, down?: boolean) => number;
}

const shrunk = emptyBlock();
const turned = emptyBlock();

export const wallsOf = (
  interiorIn: NonNullable<Layout['interior']>,
  view: View,
  thickness: readonly number[],
): Walls => {
  let interior: Interior;
  const asked = (block: Block) => solid('clearance', turnBlock(view, block, turned), thickness);
  return {
    stand: (...inner) => {
      interior = interiorIn(inner);
    },
    holds: (block) => {
      shrunk.axis = block.axis;
      for (let k = 0; k < 3; k++) {
        const less = Math.min(NANOMETRE, (block.high[k]! - block.low[k]!) / 2);
        span(shrunk, k, block.low[k]! + less, block.high[k]! - less);
      }
      return interior.contains(asked(shrunk));
    },
    way: (block, k, down = false) => {
      const face = 2 * view.axes[k]! + (view.turned[k] === down ? 1 : 0);
      return interior.way(asked(block), faces[face]!);
    },
  };
};

/**
 * How much wider than a part its place on a face is: the margin around the cutout, or what frame and margin need beyond the panels
 * beside it. A wall that is no panel of the cuboid counts as thick as the thinnest of these.
 */
export const footMargin = ({ thickness, cutoutMargin, edgeMargin }: Layout, face: number, overhang: number): number =>
  Math.max(
    cutoutMargin,
    overhang + edgeMargin - Math.min(...thickness.filter((_, side) => axisOf(side) !== axisOf(face))),
  );
