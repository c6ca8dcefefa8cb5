import type { WorkBox } from './work.js';

const axes = ['width', 'height', 'depth'] as const;
export type BraceAxis = (typeof axes)[number];
export const braceAxes = axes;

/** Corners of the opening of a window brace, in parts of its border; what such a corner takes from a rectangle in it. */
const [CORNER, TAKEN] = [1 / 4, 1 - Math.SQRT1_2];
/** What stays between a brace and whatever stands inside, m (common practice). */
const PLAY = 0.002;
/** How far from a panel a brace stands at least, in parts of the inner edge: nearer to it, it holds little. */
const NEAR = 0.2;

/** A part of an axis that something takes, and what. */
interface Taken {
  readonly from: number;
  readonly to: number;
  readonly what: string;
}

/** Where the middle of a window brace would meet what stands inside and does not go through its opening. */
function takenOf({ outer, thickness, solids = [] }: WorkBox, axis: number, border: number): Taken[] {
  const edges = [outer.width, outer.height, outer.depth];
  const edge = thickness + border * (1 + CORNER * TAKEN) + PLAY;
  return solids.flatMap(({ least, greatest, what = 'something inside' }) => {
    const goesThrough = edges.every((size, k) => k === axis || (least[k]! >= edge && greatest[k]! <= size - edge));
    const reach = thickness / 2 + PLAY;
    return goesThrough
      ? []
      : [
          {
            from: least[axis]! - reach,
            to: greatest[axis]! + reach,
            what: what === 'air' ? 'air in front of the vent' : what,
          },
        ];
  });
}

/** What a window brace at a place would meet. */
export function inTheWay(box: WorkBox, across: BraceAxis, border: number, at: number): string | undefined {
  return takenOf(box, axes.indexOf(across), border).find(({ from, to }) => at > from && at < to)?.what;
}

/** The place nearest to the middle of an axis at which a window brace meets nothing that stands inside; to a tenth of a millimetre. */
export function freePlace(box: WorkBox, across: BraceAxis, border: number): number | undefined {
  const axis = axes.indexOf(across);
  const edge = box.outer[across];
  const middle = edge / 2;
  const least = box.thickness + NEAR * (edge - 2 * box.thickness);
  const taken = takenOf(box, axis, border);
  const places = [
    middle,
    ...taken.flatMap(({ from, to }) => [Math.floor(1e4 * from) / 1e4, Math.ceil(1e4 * to) / 1e4]),
  ];
  return places
    .filter((at) => at >= least && at <= edge - least && !taken.some(({ from, to }) => at > from && at < to))
    .sort((one, other) => Math.abs(one - middle) - Math.abs(other - middle))[0];
}

/** Whether boards divide the air of a box, so that a brace would have to be cut out around them. */
export const isDivided = ({ holes, solids = [] }: WorkBox): boolean =>
  holes.some(({ board }) => board !== undefined) || solids.some(({ what }) => what === 'board');
