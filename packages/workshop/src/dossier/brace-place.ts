import { BESIDE, insideBoards } from './inside-boards.js';
import type { WorkBox } from './work.js';

const axes = ['width', 'height', 'depth'] as const;
export type BraceAxis = (typeof axes)[number];
export const braceAxes = axes;

/** Corners of the opening of a window brace, in parts of its border; what such a corner takes from a rectangle in it. */
const [CORNER, TAKEN] = [1 / 4, 1 - Math.SQRT1_2];
/** What stays between a brace and whatever stands inside, m (common practice). */
const PLAY = 0.002;
/** How far from a panel or a partition a brace stands at least, in parts of the way between two: nearer to one, it holds little. */
const NEAR = 0.2;
/** A part of an axis that something takes, and what. */
interface Taken {
  readonly from: number;
  readonly to: number;
  readonly what: string;
}

/** Axes of the two measures of a hole. */
const axesOf = (face: WorkBox['holes'][number]['face']): readonly [number, number] =>
  face === 'left' || face === 'right' ? [2, 1] : face === 'bottom' || face === 'top' ? [0, 2] : [0, 1];

/** The parts of an axis at which holes open in the panels that a brace across it stands on. */
const opened = ({ holes }: WorkBox, axis: number): Taken[] =>
  holes.flatMap((hole) => {
    const k = axesOf(hole.face).indexOf(axis);
    if (hole.board !== undefined || k < 0) return [];
    const [middle, half] = [
      k === 0 ? hole.across : hole.up,
      hole.form === 'circle' ? hole.diameter / 2 : hole.sides[k]! / 2,
    ];
    return [{ from: middle - half, to: middle + half, what: hole.what }];
  });

/** Where the middle of a window brace would meet what stands inside and does not go through its opening, or a hole in a panel. */
function takenOf(box: WorkBox, axis: number, border: number): Taken[] {
  const { outer, thickness, solids = [] } = box;
  const edges = [outer.width, outer.height, outer.depth];
  const edge = thickness + border * (1 + CORNER * TAKEN) + PLAY;
  const inside = [
    ...solids.filter(({ what }) => what !== 'board'),
    ...insideBoards(box).map(({ name, ...place }) => ({ what: name, ...place })),
  ];
  const met = inside.flatMap(({ least, greatest, what = 'something inside' }): Taken[] => {
    const goesThrough = edges.every((size, k) => k === axis || (least[k]! >= edge && greatest[k]! <= size - edge));
    if (goesThrough) return [];
    return [{ from: least[axis]!, to: greatest[axis]!, what: what === 'air' ? 'air in front of the vent' : what }];
  });
  const reach = thickness / 2 + PLAY;
  return [...met, ...opened(box, axis)].map(({ from, to, what }) => ({ from: from - reach, to: to + reach, what }));
}

/** What a window brace would meet at a place, or wherever it is across an axis; each once. */
export function inTheWay(box: WorkBox, across: BraceAxis, border: number, at?: number): string[] {
  const { thickness: t } = box;
  const edge = box.outer[across];
  const beside = t + BESIDE * (edge - 2 * t);
  if (at !== undefined && (at < beside || at > edge - beside)) return ['panel beside it'];
  const taken = takenOf(box, axes.indexOf(across), border);
  const met = at === undefined ? taken : taken.filter(({ from, to }) => at > from && at < to);
  return [...new Set(met.map(({ what }) => what))];
}

/**
 * The places across an axis at which a window brace meets nothing that stands inside: one between each two neighbours of the panels and the boards
 * that divide the axis, the nearest to the middle between them; to a tenth of a millimetre.
 */
export function freePlaces(box: WorkBox, across: BraceAxis, border: number): number[] {
  const axis = axes.indexOf(across);
  const { thickness: t } = box;
  const edge = box.outer[across];
  const beside = t + BESIDE * (edge - 2 * t);
  const taken = takenOf(box, axis, border);
  const dividing = insideBoards(box)
    .filter((board) => board.axis === axis)
    .sort((one, other) => one.least[axis]! - other.least[axis]!);
  return [...dividing, undefined].flatMap((board, i) => {
    const from = dividing[i - 1]?.greatest[axis] ?? t;
    const to = board?.least[axis] ?? edge - t;
    const middle = (from + to) / 2;
    const near = NEAR * (to - from);
    const [low, high] = [Math.max(from + near, beside), Math.min(to - near, edge - beside)];
    const places = [
      middle,
      ...taken.flatMap((one) => [Math.floor(1e4 * one.from) / 1e4, Math.ceil(1e4 * one.to) / 1e4]),
    ];
    return places
      .filter((at) => at >= low && at <= high && !taken.some((one) => at > one.from && at < one.to))
      .sort((one, other) => Math.abs(one - middle) - Math.abs(other - middle))
      .slice(0, 1);
  });
}
