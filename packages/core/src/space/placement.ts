import { NANOMETRE } from '../quantity/nanometre.js';
import { type Block, emptyBlock, isFar, span } from './solids.js';

/** Columns and rows of drivers on one face. A single driver is a cylinder; a block of several is kept free as a cuboid. */
export const arrangements = (count: number): readonly (readonly [columns: number, rows: number])[] =>
  [1, 2, 3, 4].filter((columns) => count % columns === 0).map((columns) => [columns, count / columns]);

/**
 * Where the centre of a part may be along one axis of its face, in inner coordinates: `limit[0]` to `limit[1]`. Behind
 * the panel the part needs its half width; on the outer surface its flange and the margin to the edge of the panel,
 * where the panels on both sides let it reach over their thickness.
 */
export function centreLimits(
  inner: number,
  halfBehind: number,
  halfOutside: number,
  thickness: readonly number[],
  axis: number,
  limit: Float64Array,
): boolean {
  limit[0] = Math.max(halfBehind, halfOutside - thickness[2 * axis]!);
  limit[1] = inner - Math.max(halfBehind, halfOutside - thickness[2 * axis + 1]!);
  const over = limit[0]! - limit[1]!;
  // A part that fits exactly is placed in the middle.
  if (over > 0 && over <= NANOMETRE) limit[0] = limit[1] = limit[0]! - over / 2;
  return over <= NANOMETRE;
}

/**
 * A box seen from a vent: axis 0 runs from the vent's face inwards, axis 1 along the second leg, axis 2 across both.
 * In this view the search has one case instead of twenty-four.
 */
export interface View {
  /** Axes of the box: inwards, along, across. */
  readonly axes: [number, number, number];
  /** Which of them are reversed. */
  readonly turned: [boolean, boolean, boolean];
  /** Inner edges, in the order of the view. */
  readonly size: [number, number, number];
}

/** Sets the view of a face and a direction along it. */
export function look(view: View, inner: readonly number[], face: number, along: number, backwards: boolean): void {
  const inwards = face >> 1;
  view.axes[0] = inwards;
  view.axes[1] = along;
  view.axes[2] = 3 - inwards - along;
  view.turned[0] = isFar(face);
  view.turned[1] = backwards;
  for (let k = 0; k < 3; k++) view.size[k] = inner[view.axes[k]!]!;
}

/** A coordinate of the view from one of the box, or the other way: the same formula. */
export const turn = (view: View, k: number, at: number): number => (view.turned[k] ? view.size[k]! - at : at);

/** A block of the view in the axes of the box. */
export function turnBlock(view: View, block: Block, turned = emptyBlock()): Block {
  turned.axis = block.axis < 0 ? -1 : view.axes[block.axis]!;
  for (let k = 0; k < 3; k++) {
    const [first, last] = view.turned[k] ? [block.high[k]!, block.low[k]!] : [block.low[k]!, block.high[k]!];
    span(turned, view.axes[k]!, turn(view, k, first), turn(view, k, last));
  }
  return turned;
}

/** The distance inwards from the inner surface of a face, as a coordinate along its axis. */
export const inwards = (face: number, inner: number, distance: number): number =>
  isFar(face) ? inner - distance : distance;
