import type { Reason } from '@airspring/core/fault';
import { NANOMETRE } from '@airspring/core/quantity';
import { seenFromOutside } from '../drawing/outline-drawing.js';
import { isCover } from '../drawing/outline-edges.js';
import { boundsOf, clearanceAt, type PlanePoint } from '../outline/index.js';
import { boltsOf, type Cutout, halvesOf } from '../panel/cutout.js';
import { betweenReasons, withinReasons } from '../panel/cutout-fits.js';
import { DEFAULT_PLAY as PLAY } from '../panel/panel-box-input.js';
import { reasonOf, told } from '../words/told.js';
import type { ShapedBoard } from './shaped-boards.js';

/** A panel as its drawing has it: how much is free around a place, at a depth under its outer surface. */
function freeAround({ panel }: ShapedBoard): (at: PlanePoint, depth: number) => number {
  const { face, outline, inner, thickness } = panel;
  const size = boundsOf(outline)[1];
  return (at, depth) => {
    const share = depth / thickness;
    const section = outline.map(([x, y], i): PlanePoint => {
      const [u, v] = inner[i]!;
      return seenFromOutside(face, size, [x + share * (u - x), y + share * (v - y)]);
    });
    return clearanceAt(section, at);
  };
}

/** Why what is made around the hole of a driver does not fit its panel. */
function edgeReasons(board: ShapedBoard, { part, across, up, recess, bolts }: Cutout): Reason[] {
  const { name, thickness } = board.panel;
  const free = freeAround(board);
  const because: Reason[] = [];
  if (recess) {
    const [radius] = halvesOf(recess.form);
    const left = Math.min(...[0, recess.depth].map((depth) => free([across, up], depth))) - radius;
    const where =
      left < -NANOMETRE
        ? told`passes the edge of the panel by ${-left}`
        : told`comes within ${Math.max(0, left)} of the edge of the panel`;
    const words = told`On the ${name}, the recess of the ${part} ${where}; ${PLAY} must be left.`;
    if (left < PLAY - NANOMETRE) because.push(reasonOf('recess-flush', words));
  }
  // Behind the edges of a panel that covers them stand the others.
  const behind = isCover(board.panel) ? thickness : 0;
  const left = Math.min(
    ...(bolts ? boltsOf(bolts) : []).map(
      ([x, y]) =>
        Math.min(...[0, thickness].map((depth) => free([across + x, up + y], depth))) - bolts!.hole / 2 - behind,
    ),
  );
  if (left < PLAY - NANOMETRE) {
    const beside = behind > 0 ? 'the panels behind its edges' : 'the edge of the panel';
    const where =
      left < -NANOMETRE ? told`passes ${beside} by ${-left}` : told`comes within ${Math.max(0, left)} of ${beside}`;
    because.push(
      reasonOf('cutout-flush', told`On the ${name}, a bolt of the ${part} ${where}; ${PLAY} must stay free.`),
    );
  }
  return because;
}

/** Why what is cut into the panels of a box that is no cuboid cannot be made. */
export function shapedReasons(boards: readonly ShapedBoard[]): Reason[] {
  const because = boards.flatMap((board) => {
    const { panel, cutouts } = board;
    const middles = cutouts.map(({ across, up }): readonly [number, number] => [across, up]);
    return [
      ...cutouts.flatMap((one) => [...withinReasons(one, panel.thickness, 0, PLAY), ...edgeReasons(board, one)]),
      ...betweenReasons(panel.name, cutouts, middles, PLAY),
    ];
  });
  return [...new Map(because.map((reason) => [reason.text, reason])).values()];
}
