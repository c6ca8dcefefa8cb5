import type { Face } from '@airspring/core/space';
import type { Piece } from '../panel/index.js';
import { type Side, sides } from '../panel/piece.js';
import { type At, type Callout, type Label, line, rectangle, type Shape } from './drawing.js';

/** Something behind a cutout that points to one of the panels around. */
export interface Pointing {
  /** The part of its cutouts, as `vent`. */
  readonly part: string;
  readonly towards: Face;
  /** What points there, in words. */
  readonly says: string;
}

/** Where a board behind a panel is glued to it: a rectangle of the drawing. */
export interface Meeting {
  /** What the board is called. */
  readonly says: string;
  readonly least: At;
  readonly greatest: At;
  /** Which of its edges are dimensioned, from the left and from below. */
  readonly told: readonly [across: readonly number[], up: readonly number[]];
}

/** A shaded band for each board, and beside the drawing what it is; equal words once. */
export function bands(meetings: readonly Meeting[]): { shapes: Shape[]; callouts: Callout[] } {
  const size = ({ least, greatest }: Meeting) => [greatest[0] - least[0], greatest[1] - least[1]] as const;
  const named = new Map(meetings.map((one) => [one.says, one]));
  return {
    shapes: meetings.map((one) => rectangle('note', one.least, ...size(one), 'tint')),
    callouts: [...named.values()].map((one) => ({
      at: [one.greatest[0] - Math.min(0.004, size(one)[0] / 2), one.least[1] + size(one)[1] / 2],
      text: `inside: ${one.says}`,
    })),
  };
}

/** Words along the right edge would lie across the lines to what stands beside the drawing: they stand there as well. */
export function besideLines(
  labels: readonly Label[],
  callouts: readonly Callout[],
  height: number,
): { readonly labels: readonly Label[]; readonly callouts: readonly Callout[] } {
  if (callouts.length === 0) return { labels, callouts };
  const right = labels.filter(({ beside }) => beside === 'right');
  return {
    labels: labels.filter((one) => !right.includes(one)),
    callouts: [...callouts, ...right.map(({ at, text }): Callout => ({ at: [at[0], height * LOW], text }))],
  };
}
/** Where the right edge is pointed at, as a share of the height: below what most cutouts lead from. */
const LOW = 0.08;

const AWAY = { left: [-1, 0], right: [1, 0], bottom: [0, -1], top: [0, 1] } as const;

/** An arrow from the edge of a cutout to the side at which the panel is that something behind it points to. */
export function arrows(
  { cutouts, edges }: Pick<Piece, 'cutouts'> & { readonly edges: Readonly<Record<Side, { readonly meets?: string }>> },
  pointings: readonly Pointing[],
): { shapes: Shape[]; callouts: Callout[] } {
  const found = pointings.flatMap(({ part, towards, says }) => {
    const side = sides.find((one) => edges[one].meets === towards);
    if (side === undefined) return [];
    const [x, y] = AWAY[side];
    return cutouts
      .filter((one) => one.part === part && one.opening)
      .map(({ across, up, opening }) => {
        const half = opening && 'diameter' in opening ? opening.diameter / 2 : 0.02;
        const at = (along: number, beside = 0) =>
          [across + along * half * x + beside * half * y, up + along * half * y + beside * half * x] as const;
        return {
          lines: [[at(0), at(0.9)] as const, [at(0.9), at(0.6, 0.2)] as const, [at(0.9), at(0.6, -0.2)] as const],
          tip: at(0.9),
          says,
        };
      });
  });
  return {
    shapes: found.flatMap(({ lines }) => lines.map(([from, to]) => line('note', from, to))),
    callouts: found.map(({ tip, says }) => ({ at: tip, text: says })),
  };
}
