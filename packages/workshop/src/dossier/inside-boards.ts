import { si } from '@airspring/core/quantity';
import { axisOf, isFar } from '../panel/box-edges.js';
import type { BraceInput } from '../panel/index.js';
import { planeAcross, planeOf } from '../panel/plane.js';
import type { WorkBox } from './work.js';

const axes = ['width', 'height', 'depth'] as const;

/** A board that divides the air of a box, by its cuboid from the left, bottom and front outer edges, m. */
export interface InsideBoard {
  readonly name: string;
  /** The axis that it divides: 0 width, 1 height, 2 depth. */
  readonly axis: number;
  readonly least: readonly number[];
  readonly greatest: readonly number[];
}

/** Whether a hole is in a board inside the box; a panel that covers a part of its face lies on the outside. */
export const isInside = ({ board }: WorkBox['holes'][number]): boolean => board !== undefined && board.from?.[2] !== 0;

/** The boards inside that drivers or vents stand in, as their holes state them. */
function holed({ holes, outer, thickness }: WorkBox): InsideBoard[] {
  const edges = axes.map((axis) => outer[axis]);
  const found = holes.filter(isInside).flatMap(({ face, board }): InsideBoard[] => {
    if (board?.from === undefined) return [];
    const axis = axisOf(face);
    const [across, up] = planeOf(face).axes;
    const [left, low, inwards] = board.from;
    const near = isFar(face) ? edges[axis]! - inwards - thickness : inwards;
    const least: number[] = [];
    const greatest: number[] = [];
    for (const [one, from, size] of [
      [axis, near, thickness],
      [across, left, board.size[0]],
      [up, low, board.size[1]],
    ] as const) {
      least[one] = from;
      greatest[one] = from + size;
    }
    return [{ name: board.name, axis, least, greatest }];
  });
  return [...new Map(found.map((one) => [one.name, one])).values()];
}

/** All boards that divide the air of a box. */
export function insideBoards(box: WorkBox): InsideBoard[] {
  const lined = (box.solids ?? []).flatMap(({ what, least, greatest }): InsideBoard[] => {
    if (what !== 'board') return [];
    const sizes = least.map((from, k) => greatest[k]! - from);
    return [{ name: 'inner board', axis: sizes.indexOf(Math.min(...sizes)), least, greatest }];
  });
  return [...holed(box), ...lined];
}

/** A board inside as panels take a brace: it holds those that it is glued to. */
export function asBrace({ axis, least, greatest }: InsideBoard, { thickness }: WorkBox): BraceInput {
  const plane = planeAcross(axis).axes;
  const from = plane.map((one) => least[one]! - thickness) as [number, number];
  const to = plane.map((one) => greatest[one]! - thickness) as [number, number];
  return {
    across: axes[axis]!,
    at: si('length', (least[axis]! + greatest[axis]!) / 2),
    thickness: si('length', greatest[axis]! - least[axis]!),
    form: () => ({ least: from, greatest: to, windows: [] }),
  };
}

/** Nearer to a panel, in parts of the inner edge, a board is a part of it. */
export const BESIDE = 0.025;

/** Whether a board stands so near to a panel that it is a part of it. */
export function isBeside({ outer, thickness }: WorkBox, { axis, least, greatest }: InsideBoard): boolean {
  const clear = outer[axes[axis]!] - 2 * thickness;
  const at = (least[axis]! + greatest[axis]!) / 2 - thickness;
  return Math.min(at, clear - at) < BESIDE * clear;
}
