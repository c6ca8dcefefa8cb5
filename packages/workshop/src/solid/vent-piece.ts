import { NANOMETRE } from '@airspring/core/quantity';
import { extentOf, type Mesh, type SpacePoint } from '../mesh/index.js';
import type { Outline, PlanePoint } from '../outline/index.js';
import type { Frame } from './centre-line.js';
import { reachOf } from './piece-reach.js';
import { lineOf, type VentDrawing } from './vent-drawing.js';
import { heightAt, ventMesh } from './vent-solid.js';

/** A wall to be divided. */
export interface Whole {
  readonly drawing: VentDrawing;
  /** The wall of its drawing, cut open along its centre line. */
  readonly profileOf: (drawing: VentDrawing) => Outline;
  /** No joint lies before this position, m. */
  readonly head: number;
  readonly name: string;
}

/** Sizes of a joint, m. */
export interface Joint {
  readonly overlap: number;
  readonly clearance: number;
  /** Thickness of the spigot, and of the socket. */
  readonly half: number;
  /** The first piece ends here at the latest, m. */
  readonly firstWithin?: number;
}

/** What a printer can build, m. */
export interface Bed {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

/** How a piece is printed: on its outer end, or on its side, its bend flat on the bed. */
export type Stand = 'on its end' | 'on its side';

const profileOf = (whole: Whole, joint: Joint, from: number, to: number): Outline =>
  from === 0 && to === whole.drawing.length ? whole.profileOf(whole.drawing) : pieceProfile(whole, joint, from, to);

/** The frame that becomes the bed. */
function bedUnder({ drawing }: Whole, joint: Joint, from: number, to: number, stand: Stand): Frame {
  const line = lineOf(drawing);
  const start = line.frame(from === 0 ? 0 : from + joint.clearance);
  const arc = stand === 'on its end' ? undefined : arcWithin(drawing, from, to);
  if (arc === undefined) return start;
  // Part of a bend tells towards which side it turns.
  const { along } = line.frame(arc.from + (arc.to - arc.from) * Math.min(1, 1 / arc.angle));
  const ahead = dot(along, start.along);
  const aside = [0, 1, 2].map((k) => along[k]! - ahead * start.along[k]!);
  const length = Math.hypot(...aside);
  const [x, y] = [start.along, aside.map((one) => one / length) as unknown as SpacePoint];
  return { origin: start.origin, x, y, along: cross(x, y) };
}

const arcWithin = (drawing: VentDrawing, from: number, to: number) =>
  lineOf(drawing).arcs.find((arc) => arc.from >= from && arc.to <= to + NANOMETRE);

const dot = (one: SpacePoint, other: SpacePoint): number => one[0] * other[0] + one[1] * other[1] + one[2] * other[2];

const cross = ([a, b, c]: SpacePoint, [x, y, z]: SpacePoint): SpacePoint => [
  b * z - c * y,
  c * x - a * z,
  a * y - b * x,
];

/** The edges of the cuboid that a piece needs, m; its height is the last. */
export const edgesOf = (whole: Whole, joint: Joint, from: number, to: number, stand: Stand): SpacePoint =>
  reachOf(whole.drawing, profileOf(whole, joint, from, to), bedUnder(whole, joint, from, to, stand));

/**
 * How a printer takes a piece: on its end where it can. With the places for joints, a bent one may lie on its side; its flange lies
 * flat on the bed all the same, wherever a joint finds room between flange and bend.
 */
export function standOf(
  whole: Whole,
  joint: Joint,
  [from, to]: readonly [from: number, to: number],
  bed: Bed,
  places?: readonly number[],
): Stand | undefined {
  const takes = (stand: Stand): boolean => {
    const [x, y, z] = edgesOf(whole, joint, from, to, stand);
    const [wide, deep] = [Math.max(bed.width, bed.depth) + SPARE, Math.min(bed.width, bed.depth) + SPARE];
    return Math.max(x, y) <= wide && Math.min(x, y) <= deep && z <= bed.height + SPARE;
  };
  if (takes('on its end')) return 'on its end';
  const arc = arcWithin(whole.drawing, from, to);
  if (arc === undefined || places === undefined || (from === 0 && places.some((place) => place < arc.from)))
    return undefined;
  return takes('on its side') ? 'on its side' : undefined;
}

/** What is not measured of a piece that is as large as the printer, m. */
const SPARE = NANOMETRE + 1e-5;

/** The solid of one piece as it is printed. */
export function pieceOf(whole: Whole, joint: Joint, from: number, to: number, stand: Stand): Mesh {
  const mesh = ventMesh(whole.drawing, profileOf(whole, joint, from, to), from === 0);
  const turned = seenFrom(mesh, bedUnder(whole, joint, from, to, stand));
  if (stand === 'on its end') return turned;
  const { least } = extentOf(turned);
  return { ...turned, corners: turned.corners.map((at, i) => at - least[i % 3]!) };
}

/** The wall of a vent between two joints: a socket at the outer one, a spigot at the inner one. */
function pieceProfile(
  { drawing, profileOf }: Whole,
  { overlap, clearance, half }: Joint,
  from: number,
  to: number,
): Outline {
  const wall = profileOf(drawing);
  const turn = wall.findIndex(([along], i) => i > 0 && along === drawing.length && wall[i - 1]![0] === drawing.length);
  const [clear, outside] = [wall.slice(0, turn), wall.slice(turn).reverse()];
  const [first, last] = [from === 0, to === drawing.length];
  const [clearFrom, clearTo] = [first ? 0 : from + overlap, last ? to : to + overlap];
  const [outFrom, outTo] = [first ? 0 : from + clearance, to];
  const duct = between(clear, clearFrom, clearTo);
  const outer = between(outside, outFrom, outTo);
  const spigot: PlanePoint[] = last
    ? []
    : [
        [to + overlap, half],
        [to, half],
      ];
  const socket: PlanePoint[] = first
    ? []
    : [
        [from + clearance, half + clearance],
        [from + overlap, half + clearance],
      ];
  return [...duct, ...spigot, ...outer.reverse(), ...socket];
}

/** The part of a line between two positions, with its ends. */
function between(line: readonly PlanePoint[], from: number, to: number): PlanePoint[] {
  const [start, end] = [line[0]![0], line.at(-1)![0]];
  const inside = line.filter(
    ([along]) => (along > from + NANOMETRE || from === start) && (along < to - NANOMETRE || to === end),
  );
  return [
    ...(from === start ? [] : [[from, heightAt(line, from)] as const]),
    ...inside,
    ...(to === end ? [] : [[to, heightAt(line, to)] as const]),
  ];
}

/** A solid as it is seen from a frame: the frame becomes the origin and the axes. */
function seenFrom({ corners, triangles }: Mesh, { origin, x, y, along }: Frame): Mesh {
  const turned = new Float64Array(corners.length);
  for (let i = 0; i < corners.length; i += 3) {
    const at = [0, 1, 2].map((k) => corners[i + k]! - origin[k]!);
    [x, y, along].forEach((axis, k) => {
      turned[i + k] = at[0]! * axis[0] + at[1]! * axis[1] + at[2]! * axis[2];
    });
  }
  return { corners: turned, triangles };
}
