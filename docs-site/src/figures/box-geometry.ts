import type { Design, DesignVent, Hole } from 'airspring';

/** From left, from the bottom, from the front, m. */
export type Point = readonly [x: number, y: number, z: number];

/** Out of a face. */
export const outwards: Readonly<Record<Hole['face'], Point>> = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  bottom: [0, -1, 0],
  top: [0, 1, 0],
  front: [0, 0, -1],
  back: [0, 0, 1],
};

/** Across the box. */
export const opposite: Readonly<Record<Hole['face'], Hole['face']>> = {
  left: 'right',
  right: 'left',
  bottom: 'top',
  top: 'bottom',
  front: 'back',
  back: 'front',
};

/** A point further on. */
export const along = (from: Point, direction: Point, by: number): Point => [
  from[0] + direction[0] * by,
  from[1] + direction[1] * by,
  from[2] + direction[2] * by,
];

/** Centre of a hole on the outer surface, or on the board inside that it is in. */
export function centreOf({ board, ...hole }: Hole, outer: Design['box']['outer']): Point {
  if (board === undefined) return onSurface(hole, outer);
  const [across, up, inwards] = board.from;
  const outside = onSurface({ ...hole, across: hole.across + across, up: hole.up + up }, outer);
  return along(outside, outwards[hole.face], -inwards);
}

function onSurface(
  { face, across, up }: Pick<Hole, 'face' | 'across' | 'up'>,
  [width, height, depth]: Design['box']['outer'],
): Point {
  if (face === 'left' || face === 'right') return [face === 'left' ? 0 : width, up, across];
  if (face === 'bottom' || face === 'top') return [across, face === 'bottom' ? 0 : height, up];
  return [across, up, face === 'front' ? 0 : depth];
}

const X: Point = [1, 0, 0];
const Y: Point = [0, 1, 0];
const Z: Point = [0, 0, 1];

/** The directions in which a face is measured: across and up. */
const axesOf = (face: Hole['face']): readonly [Point, Point] =>
  face === 'left' || face === 'right' ? [Z, Y] : face === 'bottom' || face === 'top' ? [X, Z] : [X, Y];

/** Two opposite corners of a hole, or of the square around a round one. */
export function cornersOf(hole: Hole, centre: Point): readonly [Point, Point] {
  const [across, up] = axesOf(hole.face);
  const [wide, high] = hole.form === 'circle' ? [hole.diameter, hole.diameter] : hole.sides;
  const corner = (sign: number) => along(along(centre, across, (sign * wide) / 2), up, (sign * high) / 2);
  return [corner(-1), corner(1)];
}

/** Points of the vent's centre line: straight, arc in short chords, straight. */
export function centreLine(start: Point, { face, length, bend }: DesignVent): Point[] {
  const out = outwards[face];
  const inwards: Point = [-out[0], -out[1], -out[2]];
  if (!bend) return [start, along(start, inwards, length)];
  const turn = outwards[bend.towards];
  const bendStart = along(start, inwards, bend.firstLeg);
  const arc = Array.from({ length: 19 }, (_, i) => {
    const angle = (i / 18) * (Math.PI / 2);
    return along(along(bendStart, inwards, bend.radius * Math.sin(angle)), turn, bend.radius * (1 - Math.cos(angle)));
  });
  return [start, ...arc, along(arc.at(-1) as Point, turn, bend.secondLeg)];
}
